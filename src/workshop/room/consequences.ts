import { type Compass, equalTemperedHzOf, keysOf } from '#instrument';
import { type ActionLevel, type PerBand, type ReverberationModel, type ReverberationTarget, type RoomMode, type RoomNote, absorptionOf, actionLevelOf, bassRatioOf, coincidentModesOf, criticalDistanceM, dailyExposureOf, levelAt, midOf, modeWidthOf, notingModesOf, octaveBands, ownTargetOf, powerBehind, reverberantLevelOf, reverberationOf, reverberationTargetOf, roomNotesOf, schroederOf } from '#room';
import { sumOf } from '#numerics';
import { type Issue, type Result, ok, refuse } from '#result';
import { type Hertz, type Seconds, decibels, decibelsA, hertz, hours } from '#units';
import type { RoomGiven } from './record.ts';
import { type RoomInput, roomInputOf, roomIssues } from './room-input.ts';

/** Eyring is taken where surfaces take in more than this share of the sound. @source EYRING-1930, PRACTICE */
const EYRING_ABOVE = 0.2;
/** Distances where none was stated: the ears of the player, a listener in the room. @source PRACTICE */
export const USUAL_DISTANCES_MM = { player: 700, listener: 4000 } as const;
/** The highest partial heard of a low note. */
const PARTIALS = 6;

export interface RoomLoudness {
  readonly powerDb: number;
  readonly playerDb: number;
  readonly listenerDb: number;
  readonly reverberantDb: number;
  readonly daily?: { readonly dailyDbA: number; readonly level: ActionLevel } | undefined;
}

/** All that follows from a room. */
export interface RoomConsequences {
  readonly input: RoomInput;
  /** The formula taken where one figure is told. */
  readonly model: ReverberationModel;
  readonly times: Readonly<Record<ReverberationModel, PerBand<Seconds>>>;
  readonly midS: Seconds;
  readonly bassRatio: number;
  /** Left out where no use is stated. */
  readonly target?: ReverberationTarget | undefined;
  readonly criticalM: number;
  readonly schroederHz: Hertz;
  readonly modeWidthHz: Hertz;
  readonly firstModes: readonly RoomMode[];
  readonly coincident: readonly (readonly [RoomMode, RoomMode])[];
  readonly notes: readonly RoomNote[];
  readonly loudness?: RoomLoudness | undefined;
}

/** Works a room out: reverberation, target, level, modes and the notes they hold. Refused where it does not fit together or would never fall silent. */
export function roomConsequencesOf(given: RoomGiven, piano: { readonly compass: Compass; readonly a4Hz: number }): Result<RoomConsequences> {
  const issues = roomIssues(given);
  if (issues.length > 0) return { ok: false, issues };
  const input = roomInputOf(given);
  const times = { sabine: reverberationOf(input.room, 'sabine'), eyring: reverberationOf(input.room, 'eyring') };
  const model = middleAbsorptionOf(input) > EYRING_ABOVE ? 'eyring' : 'sabine';
  const [silent] = endlessOf(input);
  if (silent !== undefined) return refuse(silent);
  const midS = midOf(times[model]);
  return ok({
    input, model, times, midS, bassRatio: bassRatioOf(times[model]),
    target: targetOf(given, input),
    criticalM: criticalDistanceM({ volumeM3: input.plan.volumeM3, reverberationS: midS }, 1),
    ...modesOf(input, midS, piano), loudness: loudnessOf(given, input, midS),
  });
}

/** What is wanted of the room: by the target of the shop’s own it took over, else by its use; nothing where neither is stated. */
function targetOf({ use, standard }: RoomGiven, { plan: { volumeM3 } }: RoomInput): ReverberationTarget | undefined {
  if (standard != null) return ownTargetOf(volumeM3, standard);
  return use === null ? undefined : reverberationTargetOf(volumeM3, use);
}

/** Mean share taken in at 500 and 1000 Hz. */
function middleAbsorptionOf({ room }: RoomInput): number {
  const area = sumOf(room.surfaces.map(({ areaM2 }) => areaM2));
  return sumOf(room.surfaces.map(({ areaM2, absorption }) => areaM2 * ((absorption[2] + absorption[3]) / 2))) / area;
}

/** Half an hour of ringing is no room. */
const MOST_M = 1e4;

function endlessOf({ room }: RoomInput): readonly Issue[] {
  const bands = octaveBands.filter((_, band) => !(room.volumeM3 / (absorptionOf(room, 'sabine')[band] ?? 0) < MOST_M)).join(', ');
  return bands === '' ? [] : [{ code: 'unsolvable', path: 'walls', given: 0, allowed: `surfaces or air that take sound in at ${bands} Hz`, params: { reason: 'neverSilent', bands } }];
}

/** The standing waves, told up to the Schroeder frequency, above which none is heard alone. */
function modesOf({ box, plan, temperatureC }: RoomInput, midS: Seconds, { compass, a4Hz }: { readonly compass: Compass; readonly a4Hz: number }): Pick<RoomConsequences, 'schroederHz' | 'modeWidthHz' | 'firstModes' | 'coincident' | 'notes'> {
  const schroederHz = schroederOf(plan.volumeM3, midS);
  const keys = keysOf(compass).map((key) => ({ key, frequencyHz: equalTemperedHzOf(compass, key, a4Hz) })).filter(({ frequencyHz }) => frequencyHz < schroederHz);
  const modeWidthHz = modeWidthOf(midS);
  const highest = keys.at(-1)?.frequencyHz ?? 0;
  const modes = notingModesOf(box, temperatureC, { allToHz: hertz(Math.max(schroederHz, highest + modeWidthHz)), axialToHz: hertz(PARTIALS * highest + modeWidthHz) });
  return { schroederHz, modeWidthHz, firstModes: modes.slice(0, 8), coincident: coincidentModesOf(modes.filter(({ frequencyHz }) => frequencyHz <= schroederHz), midS), notes: roomNotesOf(keys, modes, midS) };
}

/** How loud the piano is; nothing where neither power nor a level was stated. The exposure takes the level at the player for A-weighted, which overstates the bass. */
function loudnessOf({ loudness, playerMm, listenerMm, hoursADay }: RoomGiven, { plan }: RoomInput, midS: Seconds): RoomLoudness | undefined {
  if (loudness === null) return undefined;
  const room = { volumeM3: plan.volumeM3, reverberationS: midS };
  const powerDb = 'powerDb' in loudness ? decibels(loudness.powerDb) : powerBehind(room, decibels(loudness.levelDb), 1, loudness.distanceMm / 1000);
  const at = (mm: number) => levelAt(room, { powerDb, directivity: 1 }, mm / 1000);
  const playerDb = at(playerMm ?? USUAL_DISTANCES_MM.player);
  const dailyDbA = hoursADay === null ? undefined : dailyExposureOf([{ levelDbA: decibelsA(playerDb), hours: hours(hoursADay) }]);
  return {
    powerDb, playerDb, listenerDb: at(listenerMm ?? USUAL_DISTANCES_MM.listener), reverberantDb: reverberantLevelOf(room, powerDb),
    daily: dailyDbA === undefined ? undefined : { dailyDbA, level: actionLevelOf(dailyDbA) },
  };
}
