import { medianOf } from '#numerics';
import { type Grams, type Ratio, grams, ratio } from '#units';

/** The weights of one key's parts, each taken loose, as the balance of moments needs them. */
export interface KeyParts {
  /** Hammer and shank at the strike point, shank level and free on its flange (SW). */
  readonly hammerWeightG: Grams;
  /** Wippen at its heel, free on its flange (WW). */
  readonly wippenWeightG: Grams;
  /** Key alone on an edge at its balance hole, at the measuring point (FW); negative when the back is heavier. */
  readonly frontWeightG: Grams;
  /** What a wippen helper spring takes off at the key front (S); nought when left out. */
  readonly helperSpringG?: Grams;
  /** K, by distance. */
  readonly keyRatio: Ratio;
}

/**
 * Balance weight that the parts and the ratio of an action give.
 * BW = R·SW + K·WW − FW − S; grams, ratios pure. Ignores friction and the damper: pedal down.
 * @source OWN virtual work about the key's balance point
 */
export function balanceFromPartsOf({ hammerWeightG, wippenWeightG, frontWeightG, helperSpringG = grams(0), keyRatio, actionRatio }: KeyParts & { readonly actionRatio: Ratio }): Grams {
  return grams(actionRatio * hammerWeightG + keyRatio * wippenWeightG - frontWeightG - helperSpringG);
}

/**
 * Action ratio by weights: what the hammer weighs at the key front.
 * R = (BW + FW + S − K·WW)/SW; grams, SW above nought. Nought or less when the parts contradict the readings.
 * One note says little: its uncertainty is that of all its weighings (`touchUncertaintyOf`).
 * @source OWN the balance of moments solved for R
 */
export function weightRatioOf({ balanceWeightG, frontWeightG, hammerWeightG, wippenWeightG, keyRatio, helperSpringG = grams(0) }: KeyParts & { readonly balanceWeightG: Grams }): Ratio {
  return ratio((balanceWeightG + frontWeightG + helperSpringG - keyRatio * wippenWeightG) / hammerWeightG);
}

/**
 * Ratio by weights of a section: the median of its notes, so that a few faulty keys do not pull it. One colour at a time.
 * @throws RangeError on an empty list: callers refuse that first.
 * @source OWN
 */
export function sectionWeightRatioOf(perNote: readonly Ratio[]): Ratio {
  return ratio(medianOf(perNote));
}

/**
 * Front weight that gives a key its balance weight.
 * FW = R·SW + K·WW − S − BW, grams; negative when the key would need weight behind the balance point.
 * @source OWN the balance of moments solved for FW
 */
export function frontWeightFor({ balanceWeightG, hammerWeightG, wippenWeightG, keyRatio, weightRatio, helperSpringG = grams(0) }: Omit<KeyParts, 'frontWeightG'> & {
  readonly balanceWeightG: Grams;
  readonly weightRatio: Ratio;
}): Grams {
  return grams(weightRatio * hammerWeightG + keyRatio * wippenWeightG - helperSpringG - balanceWeightG);
}
