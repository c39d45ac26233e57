import { type UprightArms, type UprightInput, type UprightInputKey, type UprightReadings, registerOf, targetOf } from '#action';
import { type ActionTerms, type Instrument, type KeyNumber, type QuantityName, type Reading, type State, type TouchIntent, colourOf, compassOf, keysOf } from '#instrument';
import { degrees, gramMillimetres, grams, millimetres } from '#units';
import { colourSizesOf } from './colour-sizes.ts';
import { sizesAt } from './plan-sizes.ts';

/** What the touch of an upright in one state is judged from. */
export interface UprightMaterial {
  readonly instrument: Pick<Instrument, 'firstMidi' | 'lastMidi'>;
  /** Standing readings; those of other cycles are passed over. */
  readonly readings: readonly Reading[];
  readonly cycle: number;
  readonly state: State;
  readonly terms: ActionTerms | null;
  readonly intent: TouchIntent | null;
}

/** What was taken for granted; words under `upright.assumed.<name>`. */
export const uprightAssumptions = ['springOfRegister', 'damperOfRegister', 'toleranceUsual', 'armsAsFound', 'dampersOff'] as const;
export type UprightAssumption = (typeof uprightAssumptions)[number];

/** What is to be measured or stated before everything can be worked out. */
export type UprightMissing = (typeof ARMS)[number] | 'buttMm' | 'tiltDeg' | 'intent' | keyof UprightReadings;

export interface GatheredUpright {
  readonly input: UprightInput;
  readonly missing: readonly UprightMissing[];
  readonly assumed: readonly UprightAssumption[];
}

const ARMS = ['keyFrontMm', 'keyBackMm', 'wippenHeelMm', 'wippenJackMm', 'hammerMm'] as const satisfies readonly QuantityName[];
const READ = ['downWeightG', 'upWeightG', 'frontWeightG', 'hammerWeightG', 'wippenWeightG', 'damperG', 'springTorqueGMm'] as const satisfies readonly (QuantityName & keyof UprightReadings)[];

/** Departure at the key front that is told where no tolerance is stated. @source OWN */
const USUAL_TOLERANCE_G = 2;

/**
 * Gathers readings, terms and intent into what the touch of an upright is worked out from, and lists what had to be assumed and
 * what is missing. Arms and the balance lever of the butt are as stated or measured, never usual ones; what was not measured
 * again in a later state stands as found.
 * @source OWN
 */
export function uprightInputOf({ instrument, readings, cycle, state, terms, intent }: UprightMaterial): GatheredUpright {
  const compass = compassOf(instrument);
  const sizes = sizesAt(readings, cycle, state);
  const colours = { natural: colourSizesOf(readings, cycle, state, 'natural'), sharp: colourSizesOf(readings, cycle, state, 'sharp') };
  const arms = { natural: armsOf(colours.natural.sizes, terms), sharp: armsOf(colours.sharp.sizes, terms) };
  const keys = keysOf(compass).map((key): UprightInputKey => {
    const read = readOf((name) => sizes.ofKey(key, name));
    const asked = askedBalanceOf(intent, key, read);
    return { key, colour: colourOf(compass, key), register: registerOf(compass, key).name, read, ...(asked === undefined ? {} : { askedBalanceG: grams(asked) }) };
  });
  const input: UprightInput = {
    keys, arms: { ...(arms.natural === undefined ? {} : { natural: arms.natural }), ...(arms.sharp === undefined ? {} : { sharp: arms.sharp }) },
    tiltDeg: terms?.tiltDeg == null ? undefined : degrees(terms.tiltDeg),
    asked: { ...(terms?.plannedSpringTorqueGMm == null ? {} : { springTorqueGMm: gramMillimetres(terms.plannedSpringTorqueGMm) }), ...(terms?.plannedDamperG == null ? {} : { damperG: grams(terms.plannedDamperG) }) },
    toleranceG: grams(intent?.toleranceG ?? USUAL_TOLERANCE_G), upWeightMinG: intent === null ? undefined : grams(intent.upWeightMinG),
  };
  const isRead = (name: keyof UprightReadings): boolean => keys.some(({ read }) => read[name] !== undefined);
  const holds: Readonly<Record<UprightAssumption, boolean>> = {
    springOfRegister: isRead('springTorqueGMm') && input.asked.springTorqueGMm === undefined, damperOfRegister: isRead('damperG') && input.asked.damperG === undefined,
    toleranceUsual: intent === null, armsAsFound: colours.natural.isFromFound || colours.sharp.isFromFound, dampersOff: isRead('downWeightG'),
  };
  return {
    input,
    missing: [
      ...ARMS.filter((arm) => (['natural', 'sharp'] as const).some((colour) => !(Number(colours[colour].sizes[arm]) > 0))),
      ...(terms?.buttMm == null ? ['buttMm' as const] : []), ...(terms?.tiltDeg == null ? ['tiltDeg' as const] : []),
      ...READ.filter((name) => !isRead(name)), ...(intent === null ? ['intent' as const] : []),
    ],
    assumed: uprightAssumptions.filter((name) => holds[name]),
  };
}

function armsOf(sizes: Partial<Readonly<Record<QuantityName, number>>>, terms: ActionTerms | null): UprightArms | undefined {
  if (terms?.buttMm == null || ARMS.some((arm) => !(Number(sizes[arm]) > 0))) return undefined;
  return { ...(Object.fromEntries(ARMS.map((arm) => [arm, millimetres(sizes[arm] ?? 0)])) as Omit<UprightArms, 'buttMm'>), buttMm: millimetres(terms.buttMm) };
}

function readOf(at: (name: QuantityName) => number | undefined): UprightReadings {
  return Object.fromEntries(READ.flatMap((name) => {
    const value = at(name);
    return value === undefined ? [] : [[name, value]];
  }));
}

/** Balance weight the intent asks for: its own, or its down weight less the friction read at this key. */
function askedBalanceOf(intent: TouchIntent | null, key: KeyNumber, { downWeightG, upWeightG }: UprightReadings): number | undefined {
  if (intent === null) return undefined;
  if (intent.even === 'balanceWeight') return intent.targetG;
  return downWeightG === undefined || upWeightG === undefined ? undefined : targetOf(intent, key) - (downWeightG - upWeightG) / 2;
}

