import { type KeyNumber, colourOf, compass88, keysOf } from '#instrument';
import { swaysFrom } from './demo-sway.ts';

/** Lever arms of the invented grand, in millimetres. */
export const DEMO_ARMS = {
  natural: { keyFrontMm: 228, keyBackMm: 117, wippenHeelMm: 52, wippenJackMm: 76.8, rollerMm: 17, hammerMm: 130 },
  sharp: { keyFrontMm: 193, keyBackMm: 102, wippenHeelMm: 52, wippenJackMm: 76.8, rollerMm: 17, hammerMm: 130 },
} as const;

/** What one key of the invented grand really is; grams, before anything is weighed. */
export interface DemoKey {
  readonly key: KeyNumber;
  readonly ratio: number;
  readonly keyRatio: number;
  readonly hammerWeightG: number;
  readonly wippenWeightG: number;
  readonly frontWeightG: number;
  readonly frictionG: number;
  /** Part of the friction that the key has by itself. */
  readonly keyFrictionG: number;
}

/** A fault the story plants: what it adds to one key. */
interface Fault {
  readonly frictionG?: number;
  readonly keyFrictionG?: number;
  readonly frontG?: number;
  readonly hammerG?: number;
  readonly wippenG?: number;
  /** Roller arm of this shank, where it was glued out of line. */
  readonly rollerMm?: number;
}

/** Faults of single keys as found. Friction of the key is part of its friction. */
export const DEMO_FAULTS: Readonly<Record<number, Fault>> = {
  9: { frictionG: 6, keyFrictionG: 6 },
  20: { frictionG: 5, keyFrictionG: 5 },
  26: { hammerG: 0.9 },
  31: { frontG: -6.5 },
  58: { rollerMm: 15.5 },
  63: { frictionG: 5.5, frontG: 5 },
  66: { frictionG: 9, keyFrictionG: 8 },
  80: { wippenG: 7 },
  85: { hammerG: -0.7 },
};

/** A run of keys gone tight in a damp room, leads a former hand set to hide it, and a run of worn key bushings. */
const TIGHT: readonly [KeyNumber, KeyNumber] = [34, 51];
const FORMER_HAND: readonly [KeyNumber, KeyNumber] = [40, 48];
const LOOSE: readonly [KeyNumber, KeyNumber] = [71, 77];

/** Balance weight the invented maker leaded for, and the down weight the restorer aims at. */
const MAKER_BALANCE_G = 37.5;
const AIM_G = 48.5;

const within = (key: KeyNumber, [first, last]: readonly [KeyNumber, KeyNumber]): boolean => key >= first && key <= last;

/** The worn grand as it came in. */
export function demoAsFound(): readonly DemoKey[] {
  const sway = swaysFrom(1887);
  return keysOf(compass88).map((key) => {
    const fault = DEMO_FAULTS[key] ?? {};
    const { ratio, keyRatio } = leversOf(key, fault.rollerMm);
    const sound = leversOf(key);
    const wippenWeightG = 17.8 + 0.25 * sway();
    const frontWeightG = sound.ratio * newHammerOf(key) + keyRatio * wippenWeightG - MAKER_BALANCE_G + 0.6 * sway();
    const hammerWeightG = newHammerOf(key) - wearOf(key) + 0.08 * sway();
    const keyFrictionG = 2.2 + 0.6 * sway() - (within(key, LOOSE) ? 1.6 : 0);
    const frictionG = 14.2 - 0.045 * key + 0.7 * sway() + (within(key, TIGHT) ? 5 + sway() : 0) - (within(key, LOOSE) ? 4 + 0.4 * sway() : 0);
    return {
      key, ratio, keyRatio,
      hammerWeightG: hammerWeightG + (fault.hammerG ?? 0),
      wippenWeightG: wippenWeightG + (fault.wippenG ?? 0),
      frontWeightG: frontWeightG + (fault.frontG ?? 0) + (within(key, FORMER_HAND) ? 3.5 + 0.5 * sway() : 0),
      frictionG: frictionG + (fault.frictionG ?? 0),
      keyFrictionG: keyFrictionG + (fault.keyFrictionG ?? 0),
    };
  });
}

/** The same grand as it left: new hammers, centres and bushings put right, leads last. */
export function demoAsFinished(): readonly DemoKey[] {
  const sway = swaysFrom(2024);
  return demoAsFound().map(({ key, wippenWeightG }) => {
    const { ratio, keyRatio } = leversOf(key);
    const wippen = wippenWeightG - (DEMO_FAULTS[key]?.wippenG ?? 0);
    const hammerWeightG = newHammerOf(key) + 0.04 * sway();
    const usualFrictionG = 12.4 - 0.031 * key;
    const frontWeightG = ratio * hammerWeightG + keyRatio * wippen - (AIM_G - usualFrictionG) + 0.5 * sway();
    return { key, ratio, keyRatio, hammerWeightG, wippenWeightG: wippen, frontWeightG, frictionG: usualFrictionG + 0.5 * sway(), keyFrictionG: 2 + 0.4 * sway() };
  });
}

/** Down weight of a key: DW = R·SW + K·WW − FW + F. */
export function demoDownWeightOf({ ratio, hammerWeightG, keyRatio, wippenWeightG, frontWeightG, frictionG }: DemoKey): number {
  return ratio * hammerWeightG + keyRatio * wippenWeightG - frontWeightG + frictionG;
}

/** Hammer weights of a new set: a smooth curve that falls all the way. */
function newHammerOf(key: KeyNumber): number {
  return 10.6 - 0.068 * key + 0.00009 * key ** 2;
}

/** Felt filed and played away: most in the middle. */
function wearOf(key: KeyNumber): number {
  return 0.15 + 0.45 * Math.exp(-(((key - 46) / 18) ** 2));
}

function leversOf(key: KeyNumber, rollerMm?: number): { readonly keyRatio: number; readonly ratio: number } {
  const arms = DEMO_ARMS[colourOf(compass88, key)];
  const keyRatio = arms.keyBackMm / arms.keyFrontMm;
  return { keyRatio, ratio: (keyRatio * (arms.wippenJackMm / arms.wippenHeelMm) * arms.hammerMm) / (rollerMm ?? arms.rollerMm) };
}
