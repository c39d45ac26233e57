import { type Degrees, type GramMillimetres, type Grams, type Millimetres, type Ratio, grams, ratio } from '#units';

/** One key of an upright action at rest below half blow. */
export interface UprightKey {
  readonly keyFrontMm: Millimetres;
  readonly keyBackMm: Millimetres;
  readonly wippenHeelMm: Millimetres;
  readonly wippenJackMm: Millimetres;
  /** Hammer centre to the contact of jack and butt. */
  readonly buttMm: Millimetres;
  /** Hammer centre to the strike point. */
  readonly hammerMm: Millimetres;
  /** Wippen at its heel. */
  readonly wippenWeightG: Grams;
  /** What lifting the damper adds at the capstan; nought with the pedal down or before the spoon. */
  readonly damperG: Grams;
  /** Torque of the butt spring about the hammer centre. */
  readonly springTorqueGMm: GramMillimetres;
  readonly hammerMassG: Grams;
  /** Hammer from upright, away from the string above nought: then its weight pulls it back. */
  readonly tiltDeg: Degrees;
  readonly frontWeightG: Grams;
}

/** What an upright key weighs, and where it comes from; each part at the key front. */
export interface UprightTouch {
  readonly balanceWeightG: Grams;
  readonly actionRatio: Ratio;
  readonly wippenG: Grams;
  readonly damperShareG: Grams;
  readonly springG: Grams;
  readonly hammerG: Grams;
}

/**
 * Balance weight of an upright key.
 * BW + FW = K·(WW + damper) + (K·W/r_b)·(τ_spring + m·L·sin θ), R = K·W·L/r_b; K = b/a, W = w_j/w_c.
 * r_b hammer centre to jack contact, τ torque of the butt spring, m hammer, θ its tilt. Grams, millimetres, degrees.
 * Bridle strap slack, levers as at the tilt given, no friction.
 * @source OWN virtual work about the balance point
 */
export function uprightTouchOf(key: UprightKey): UprightTouch {
  const keyRatio = key.keyBackMm / key.keyFrontMm;
  const hammerTurn = (keyRatio * key.wippenJackMm) / key.wippenHeelMm / key.buttMm;
  const parts = {
    wippenG: grams(keyRatio * key.wippenWeightG),
    damperShareG: grams(keyRatio * key.damperG),
    springG: grams(hammerTurn * key.springTorqueGMm),
    hammerG: grams(hammerTurn * key.hammerMassG * key.hammerMm * Math.sin((key.tiltDeg * Math.PI) / 180)),
  };
  const balance = parts.wippenG + parts.damperShareG + parts.springG + parts.hammerG - key.frontWeightG;
  return { balanceWeightG: grams(balance), actionRatio: ratio(hammerTurn * key.hammerMm), ...parts };
}
