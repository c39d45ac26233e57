import { type Grams, grams } from '#units';

/** The two weights read at the front of a key. */
export interface TouchReadings {
  /** Smallest weight that takes the key down. */
  readonly downWeightG: Grams;
  /** Largest weight the key still lifts. */
  readonly upWeightG: Grams;
}

/**
 * Balance weight: what would hold the key still if nothing rubbed.
 * BW = (DW + UW)/2, grams. Takes friction as the same both ways; see `loadProportionalBalanceOf` for the other extreme.
 * @source PRACTICE
 */
export function balanceWeightOf({ downWeightG, upWeightG }: TouchReadings): Grams {
  return grams((downWeightG + upWeightG) / 2);
}

/**
 * Friction at the key front, as the trade reckons it.
 * F = (DW − UW)/2, grams, 0 or more for DW ≥ UW. Still holds the bias of the weight step: `thresholdCorrectedFrictionOf`.
 * @source PRACTICE
 */
export function frictionOf({ downWeightG, upWeightG }: TouchReadings): Grams {
  return grams((downWeightG - upWeightG) / 2);
}

/**
 * Friction less what the steps of the weights add to it, for the rule first weight that moves, last weight still lifted.
 * With step q the true down weight lies in (DW − q, DW], the true up weight in [UW, UW + q); between the middles F' = F − q/2.
 * Balance weight does not change. Grams. Below nought only where the step is coarser than the friction: then weigh finer.
 * @source OWN middles of the two half-open intervals
 */
export function thresholdCorrectedFrictionOf(readings: TouchReadings & { readonly stepG: Grams }): Grams {
  return grams(frictionOf(readings) - readings.stepG / 2);
}

/**
 * Balance weight if every loss grew with the load: the other extreme to the plain mean; the truth lies between.
 * DW + FW = Q/η and UW + FW = Q·η, so Q = √((DW + FW)(UW + FW)) and BW = Q − FW. Grams.
 *
 * @returns `undefined` where UW + FW is negative: no efficiency explains such readings.
 * @source OWN from the two balances of moments
 */
export function loadProportionalBalanceOf({ downWeightG, upWeightG, frontWeightG }: TouchReadings & { readonly frontWeightG: Grams }): Grams | undefined {
  const falling = downWeightG + frontWeightG;
  const rising = upWeightG + frontWeightG;
  return rising < 0 ? undefined : grams(Math.sqrt(falling * rising) - frontWeightG);
}

/** The readings that a balance weight and a friction give: DW = BW + F, UW = BW − F. Grams. @source PRACTICE */
export function touchReadingsOf({ balanceWeightG, frictionG }: { readonly balanceWeightG: Grams; readonly frictionG: Grams }): TouchReadings {
  return { downWeightG: grams(balanceWeightG + frictionG), upWeightG: grams(balanceWeightG - frictionG) };
}
