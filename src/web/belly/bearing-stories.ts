import type { AnalysedBearing, BearingRead } from '#belly';
import { type Compass, type QuantityName, type Reading, type State, noteNameOf } from '#instrument';
import type { FigureStory } from '../figure/figure-store.ts';

/** The fields of the bearing operations and the quantities they are read as. */
const READ_AS: Readonly<Record<string, QuantityName>> = {
  speakingLengthMm: 'speakingLengthMm', strings: 'stringCount', backLengthMm: 'backLengthMm', frontHeightMm: 'frontHeightMm', bridgeHeightMm: 'bridgeHeightMm', rearHeightMm: 'rearHeightMm',
  frontDeg: 'frontBearingDeg', rearDeg: 'rearBearingDeg', readingMm: 'bearingGaugeMm',
};

/** What stands behind the bearing of one note. */
export interface BehindBearing {
  readonly note: AnalysedBearing;
  readonly state: State;
  readonly readings: readonly Reading[];
  readonly compass: Compass;
}

const bearingOutputs = ['frontDeg', 'rearDeg', 'totalDeg', 'forceN'] as const;
export type BearingOutput = (typeof bearingOutputs)[number];

/** True for a field of the bearing that can be told of. */
export function isBearingOutput(output: string): output is BearingOutput {
  return bearingOutputs.some((one) => one === output);
}

/** How one figure of the bearing was made, with the readings of the note; `undefined` for an angle that was only read. */
export function bearingStory(what: string, output: BearingOutput, { note, state, readings, compass }: BehindBearing): FigureStory | undefined {
  const asked = note.read === undefined ? undefined : questionOf(note.read, note.pull);
  if (asked === undefined) return undefined;
  return { title: `${what}, ${noteNameOf(compass, note.key)}`, output, ...asked, readings: readingsBehind(Object.keys(asked.input), readings, { key: note.key, state }) };
}

type Question = Pick<FigureStory, 'operation' | 'input'>;

function questionOf(read: BearingRead, pull: AnalysedBearing['pull']): Question | undefined {
  switch (read.source) {
    case 'heights': return heightsQuestion(read, pull);
    case 'angles': return anglesQuestion(read, pull);
    case 'gauge': {
      const { source: _, ...input } = read;
      return { operation: 'bearing-gauge', input: { ...input, ...(pull === undefined ? {} : { tensionN: pull.tensionN, strings: pull.strings }) } };
    }
  }
}

/** Without a pull the angles stand alone: one string of 1 N stands in, of which only the angles are looked at. */
function heightsQuestion({ source: _, isEstimated: __, doubt, ...heights }: Extract<BearingRead, { source: 'heights' }>, pull: AnalysedBearing['pull']): Question {
  return { operation: 'bearing', input: { ...(pull ?? { tensionN: 1, strings: 1 }), ...heights, ...doubt } };
}

function anglesQuestion({ source: _, ...angles }: Extract<BearingRead, { source: 'angles' }>, pull: AnalysedBearing['pull']): Question | undefined {
  if (angles.frontDeg === undefined || angles.rearDeg === undefined) return undefined;
  return { operation: 'bearing-angles', input: { ...angles, ...pull } };
}

/** The readings of each field: of the state itself, or of the state as found where a plan leaves it as it was. */
function readingsBehind(fields: readonly string[], readings: readonly Reading[], { key, state }: { readonly key: number; readonly state: State }): Readonly<Record<string, readonly Reading[]>> {
  const ofKey = readings.filter(({ scope, index }) => scope === 'key' && index === key);
  return Object.fromEntries(fields.flatMap((field) => {
    const named = ofKey.filter(({ quantity }) => READ_AS[field] === quantity);
    const own = named.filter((reading) => reading.state === state);
    return named.length === 0 ? [] : [[field, own.length > 0 ? own : named]];
  }));
}
