import { type Grams, type Ratio, grams } from '#units';
import { balanceWeightOf, frictionOf } from './balance.ts';
import { type KeyParts, weightRatioOf } from './parts.ts';

/** A key as it is: its readings, its parts. */
export interface WeighedKey extends KeyParts {
  readonly downWeightG: Grams;
  readonly upWeightG: Grams;
}

/** A key as it ought to be. Key ratio and helper spring are those of the key as it is. */
export interface TouchTarget {
  readonly weightRatio: Ratio;
  readonly hammerWeightG: Grams;
  readonly wippenWeightG: Grams;
  readonly frontWeightG: Grams;
  readonly frictionG: Grams;
}

/** Grams of down weight that each part accounts for; positive makes the key heavier. */
export interface DeviationShares {
  readonly ratioG: Grams;
  readonly hammerG: Grams;
  readonly wippenG: Grams;
  readonly frontG: Grams;
  readonly frictionG: Grams;
}

export interface Deviation {
  readonly weightRatio: Ratio;
  readonly downWeightChangeG: Grams;
  readonly shares: DeviationShares;
}

/**
 * Splits a key's departure from its target down weight, exactly, among the parts that make it.
 * DW = R·SW + K·WW − FW − S + F. Shares: ½(SW + SW*)(R − R*), ½(R + R*)(SW − SW*), K(WW − WW*), FW* − FW, F − F*.
 *
 * They are the Shapley values of the change, so no order of repair is preferred; the change is their sum, term by term
 * as printed. Grams; SW above nought. R, friction and balance weight are those of the readings, step bias included.
 * @source SHAPLEY-1953 · OWN product rule for finite differences
 */
export function splitDeviation(key: WeighedKey, target: TouchTarget): Deviation {
  const weightRatio = weightRatioOf({ ...key, balanceWeightG: balanceWeightOf(key) });
  const shares = {
    ratioG: grams(((key.hammerWeightG + target.hammerWeightG) / 2) * (weightRatio - target.weightRatio)),
    hammerG: grams(((weightRatio + target.weightRatio) / 2) * (key.hammerWeightG - target.hammerWeightG)),
    wippenG: grams(key.keyRatio * (key.wippenWeightG - target.wippenWeightG)),
    frontG: grams(target.frontWeightG - key.frontWeightG),
    frictionG: grams(frictionOf(key) - target.frictionG),
  };
  const downWeightChangeG = grams(shares.ratioG + shares.hammerG + shares.wippenG + shares.frontG + shares.frictionG);
  return { weightRatio, downWeightChangeG, shares };
}

/** Standard uncertainties behind a split. */
export interface KeyDoubt {
  /** Of balance weight and of friction, each. */
  readonly balanceWeightUncertaintyG: Grams;
  /** Of front, hammer and wippen weight, each. */
  readonly scaleUncertaintyG: Grams;
  readonly keyRatioUncertainty: Ratio;
}

/**
 * Standard uncertainty of each share of `splitDeviation`, the target taken as exact.
 * u(d)² = Σ (∂d/∂x)² u(x)² over x = BW, FW, SW, WW, K and F, with R = (BW + FW + S − K·WW)/SW inside ratio and hammer share.
 * First order. The shares are correlated: their uncertainties do not add up to that of the change.
 * @source JCGM-100 clause 5.1.2
 */
export function shareUncertaintiesOf(key: WeighedKey, target: TouchTarget, doubt: KeyDoubt): DeviationShares {
  const { hammerWeightG: hammer, wippenWeightG: wippen, keyRatio } = key;
  const weightRatio = weightRatioOf({ ...key, balanceWeightG: balanceWeightOf(key) });
  const scale = doubt.scaleUncertaintyG;
  const throughRatio = (lever: number, direct: number): Grams =>
    grams(Math.hypot(
      lever * doubt.balanceWeightUncertaintyG,
      lever * scale,
      lever * keyRatio * scale,
      lever * wippen * doubt.keyRatioUncertainty,
      (direct - lever * weightRatio) * scale,
    ));
  return {
    ratioG: throughRatio((hammer + target.hammerWeightG) / (2 * hammer), (weightRatio - target.weightRatio) / 2),
    hammerG: throughRatio((hammer - target.hammerWeightG) / (2 * hammer), (weightRatio + target.weightRatio) / 2),
    wippenG: grams(Math.hypot(keyRatio * scale, (wippen - target.wippenWeightG) * doubt.keyRatioUncertainty)),
    frontG: scale,
    frictionG: doubt.balanceWeightUncertaintyG,
  };
}
