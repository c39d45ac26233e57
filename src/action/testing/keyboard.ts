import { type KeyNumber, colourOf, compass88, keysOf } from '#instrument';
import { grams } from '#units';
import type { KeyFigures, LeverArms, Measured, TouchInput } from '../analysis.ts';

/** What a fault adds to one key of a test keyboard; grams at the key, at the hammer, at the wippen, or millimetres of roller arm. */
export interface PlantedFault {
  readonly frictionG?: number;
  readonly frontG?: number;
  readonly hammerG?: number;
  readonly wippenG?: number;
  readonly rollerMm?: number;
}

/** Lever arms of the test keyboard; invented, of the usual order. */
export const TEST_ARMS: Readonly<Record<'natural' | 'sharp', Required<LeverArms>>> = {
  natural: { keyFrontMm: 225, keyBackMm: 115, wippenHeelMm: 65, wippenJackMm: 96, rollerMm: 17, hammerMm: 130 },
  sharp: { keyFrontMm: 190, keyBackMm: 101, wippenHeelMm: 65, wippenJackMm: 96, rollerMm: 17, hammerMm: 130 },
};

const STEP_G = 1;
const REPEATABILITY_G = 0.3;

/** A keyboard as sound as real ones are, weighed in 1 g steps, with faults planted in it. `sway` gives figures from −1 to 1. */
export function keyboardWith(faults: Readonly<Record<KeyNumber, PlantedFault>>, sway: () => number): TouchInput {
  const keys = keysOf(compass88).map((key) => weighedKey(key, faults[key] ?? {}, sway));
  return { kind: 'grand', compass: compass88, keys, arms: TEST_ARMS, stepG: STEP_G, rule: 'firstMovesLastLifts', dampers: 'lifted', helperSprings: 'none', intent: null };
}

function weighedKey(key: KeyNumber, fault: PlantedFault, sway: () => number): KeyFigures {
  const arms = TEST_ARMS[colourOf(compass88, key)];
  const keyRatio = arms.keyBackMm / arms.keyFrontMm;
  const ratioAt = (rollerMm: number): number => (keyRatio * (arms.wippenJackMm / arms.wippenHeelMm) * arms.hammerMm) / rollerMm;
  const hammer = 10.6 - 0.068 * key + 0.00009 * key ** 2;
  const frontWeight = ratioAt(arms.rollerMm) * hammer + keyRatio * 18 - 37 + 0.5 * sway() + (fault.frontG ?? 0);
  const hammerWeight = hammer + 0.1 * sway() + (fault.hammerG ?? 0);
  const wippenWeight = 18 + 0.3 * sway() + (fault.wippenG ?? 0);
  const friction = 14 - 0.045 * key + 0.8 * sway() + (fault.frictionG ?? 0);
  const balance = ratioAt(arms.rollerMm + (fault.rollerMm ?? 0)) * hammerWeight + keyRatio * wippenWeight - frontWeight;
  const touch = Math.hypot(STEP_G / Math.sqrt(12), REPEATABILITY_G);
  return {
    key,
    downWeightG: measured(Math.ceil(balance + friction), touch),
    upWeightG: measured(Math.floor(balance - friction), touch),
    frontWeightG: measured(Math.round(frontWeight * 10) / 10, 0.05),
    hammerWeightG: measured(Math.round(hammerWeight * 10) / 10, 0.05),
    wippenWeightG: measured(Math.round(wippenWeight * 10) / 10, 0.05),
  };
}

/** A figure with its standard uncertainty. */
export function measured(value: number, standardUncertaintyG?: number): Measured {
  return { value: grams(value), count: 1, standardUncertaintyG: standardUncertaintyG === undefined ? undefined : grams(standardUncertaintyG) };
}

/** Repeatable figures from −1 to 1. */
export function swayFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 31 - 1;
  };
}
