import { type Millimetres, type Ratio, ratio } from '#units';

/**
 * Lever arms of one key of a grand action: perpendicular distances from each centre to the line of the force there.
 * Naturals and sharps have arms of their own.
 */
export interface Levers {
  /** Balance point to the point where the weights stand (a). */
  readonly keyFrontMm: Millimetres;
  /** Balance point to the contact of the capstan (b). */
  readonly keyBackMm: Millimetres;
  /** Wippen centre to the contact at its heel (w_c). */
  readonly wippenHeelMm: Millimetres;
  /** Wippen centre to the contact of jack and roller (w_j). */
  readonly wippenJackMm: Millimetres;
  /** Hammer centre to the contact of the roller (r). */
  readonly rollerMm: Millimetres;
  /** Hammer centre to the strike point (L). */
  readonly hammerMm: Millimetres;
}

export interface LeverRatios {
  readonly keyRatio: Ratio;
  readonly wippenRatio: Ratio;
  readonly hammerRatio: Ratio;
  readonly actionRatio: Ratio;
}

/**
 * The ratios of the three levers and of the whole action, by distance.
 * K = b/a, W = w_j/w_c, H = L/r, R = K·W·H; pure numbers, the same in any unit of length. All arms above nought.
 * Ignores that the arms change a little over the stroke. Not the ratio by weights: friction, felt and the direction
 * of gravity set the two several per cent apart; see `weightRatioOf`.
 * @source OWN product of three levers
 */
export function leverRatiosOf({ keyFrontMm, keyBackMm, wippenHeelMm, wippenJackMm, rollerMm, hammerMm }: Levers): LeverRatios {
  const key = keyBackMm / keyFrontMm;
  const wippen = wippenJackMm / wippenHeelMm;
  const hammer = hammerMm / rollerMm;
  return { keyRatio: ratio(key), wippenRatio: ratio(wippen), hammerRatio: ratio(hammer), actionRatio: ratio(key * wippen * hammer) };
}

/**
 * Action ratio by distance from a travel trial: a block under the key front, the rise of the hammer read off.
 * R = hammer travel / key travel, both above nought, key travel read where the weights stand.
 * @source TECH-LIST-2007
 */
export function distanceRatioOf({ keyTravelMm, hammerTravelMm }: { readonly keyTravelMm: Millimetres; readonly hammerTravelMm: Millimetres }): Ratio {
  return ratio(hammerTravelMm / keyTravelMm);
}
