import { type Grams, type Ratio, grams, ratio } from '#units';
import { type KeyParts, weightRatioOf } from './parts.ts';

/** How a weight was taken. */
export interface Weighing {
  /** Step of the weights. */
  readonly stepG: Grams;
  /** Standard deviation of repeated weighings of one key; nought when left out. */
  readonly repeatabilityG?: Grams;
  /** How many weighings the figure is the mean of; 1 when left out. */
  readonly repeats?: number;
}

/**
 * Standard uncertainty of a down or up weight.
 * u² = q²/12 + s²/n: the step q as a rectangle, the repeatability s of n weighings. Grams.
 * The step's share does not shrink with repeats: the same weights stop at the same place.
 * @source JCGM-100 clauses 4.2 and 4.3.7
 */
export function weighingUncertaintyOf({ stepG, repeatabilityG = grams(0), repeats = 1 }: Weighing): Grams {
  return grams(Math.sqrt(stepG ** 2 / 12 + repeatabilityG ** 2 / repeats));
}

/**
 * Standard uncertainty of balance weight and, the same figure, of friction.
 * u(BW) = u(F) = √(u(DW)² + u(UW)²)/2, grams; the two weighings taken as independent.
 * @source JCGM-100 clause 5.1.2
 */
export function balanceUncertaintyOf({ downWeightUncertaintyG, upWeightUncertaintyG }: { readonly downWeightUncertaintyG: Grams; readonly upWeightUncertaintyG: Grams }): Grams {
  return grams(Math.hypot(downWeightUncertaintyG, upWeightUncertaintyG) / 2);
}

export interface RatioDoubt extends KeyParts {
  readonly balanceWeightG: Grams;
  readonly balanceWeightUncertaintyG: Grams;
  /** Standard uncertainty of front, hammer and wippen weight, all taken on one scale. */
  readonly scaleUncertaintyG: Grams;
  readonly keyRatioUncertainty: Ratio;
}

/** Parts of a variance, adding up to 1. */
export interface RatioShares {
  readonly balanceWeight: Ratio;
  readonly frontWeight: Ratio;
  readonly hammerWeight: Ratio;
  readonly wippenWeight: Ratio;
  readonly keyRatio: Ratio;
}

export interface RatioUncertainty {
  readonly weightRatio: Ratio;
  /** Standard uncertainty, k = 1. */
  readonly weightRatioUncertainty: Ratio;
  readonly shares: RatioShares;
}

/**
 * Uncertainty of the ratio by weights of one note, and what it comes from.
 * u(R)² = [u(BW)² + u(FW)² + K²·u(WW)² + WW²·u(K)² + R²·u(SW)²]/SW²; shares are the terms over their sum.
 * First order; holds while u(SW) is small against SW. The helper spring is taken as known.
 * @source JCGM-100 clause 5.1.2
 */
export function ratioUncertaintyOf(doubt: RatioDoubt): RatioUncertainty {
  const { hammerWeightG, wippenWeightG, keyRatio, scaleUncertaintyG } = doubt;
  const weightRatio = weightRatioOf(doubt);
  const terms = {
    balanceWeight: doubt.balanceWeightUncertaintyG ** 2,
    frontWeight: scaleUncertaintyG ** 2,
    hammerWeight: (weightRatio * scaleUncertaintyG) ** 2,
    wippenWeight: (keyRatio * scaleUncertaintyG) ** 2,
    keyRatio: (wippenWeightG * doubt.keyRatioUncertainty) ** 2,
  };
  const variance = terms.balanceWeight + terms.frontWeight + terms.hammerWeight + terms.wippenWeight + terms.keyRatio;
  const shareOf = (term: number): Ratio => ratio(variance === 0 ? 0 : term / variance);
  return {
    weightRatio,
    weightRatioUncertainty: ratio(Math.sqrt(variance) / hammerWeightG),
    shares: {
      balanceWeight: shareOf(terms.balanceWeight),
      frontWeight: shareOf(terms.frontWeight),
      hammerWeight: shareOf(terms.hammerWeight),
      wippenWeight: shareOf(terms.wippenWeight),
      keyRatio: shareOf(terms.keyRatio),
    },
  };
}
