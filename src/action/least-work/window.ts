/** Limits of one key, grams, with the guard already taken off. */
export interface TouchLimits {
  readonly quantity: 'downWeight' | 'balanceWeight';
  readonly lowG: number;
  readonly highG: number;
  /** `-Infinity` where none is asked. */
  readonly minUpWeightG: number;
  /** `-Infinity` to `Infinity` where none is asked. */
  readonly frictionFromG: number;
  readonly frictionToG: number;
}

/** Friction as it is expected, and how far it may be off. */
export interface ExpectedFriction {
  readonly frictionG: number;
  readonly doubtG: number;
}

/** Balance weights that keep all limits at one friction, whichever way its doubt falls; empty when `low` lies above `high`. */
export interface BalanceWindow {
  readonly lowG: number;
  readonly highG: number;
  /** By how much the friction itself keeps its own limits; negative when it does not. */
  readonly frictionMarginG: number;
}

/**
 * The balance weights allowed at a friction F ± U.
 * DW = BW + F in [T − t, T + t] for all F: T − t − F + U ≤ BW ≤ T + t − F − U; with balance weight asked, T − t ≤ BW ≤ T + t.
 * UW = BW − F ≥ UW_min: BW ≥ UW_min + F + U. Friction between its ends, with U to either side, and never below nought: no work
 * frees a key of more friction than it has.
 * @source OWN
 */
export function balanceWindowOf(limits: TouchLimits, { frictionG, doubtG }: ExpectedFriction): BalanceWindow {
  const shift = limits.quantity === 'downWeight' ? frictionG : 0;
  const slack = limits.quantity === 'downWeight' ? doubtG : 0;
  return {
    lowG: Math.max(limits.lowG - shift + slack, limits.minUpWeightG + frictionG + doubtG),
    highG: limits.highG - shift - slack,
    frictionMarginG: Math.min(frictionG - doubtG - limits.frictionFromG, limits.frictionToG - frictionG - doubtG, frictionG < 0 ? frictionG : Infinity),
  };
}

/** Distance of a balance weight to the nearest limit of its window, negative outside; friction counts with it. @source OWN */
export function marginOf({ lowG, highG, frictionMarginG }: BalanceWindow, balanceG: number): number {
  return Math.min(balanceG - lowG, highG - balanceG, frictionMarginG);
}

/** Balance weight with the largest margin: the middle of the window. */
export function middleOf({ lowG, highG }: BalanceWindow): number {
  return (lowG + highG) / 2;
}

/** Rounding that no weighing can tell: a key this far outside counts as inside. */
export const TOUCHING_G = 1e-9;
