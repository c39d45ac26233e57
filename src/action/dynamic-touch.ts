import { type Grams, type Millimetres, type Milliseconds, type Newtons, type Ratio, STANDARD_GRAVITY_M_PER_S2, milliseconds, newtons, ratio } from '#units';

/** A key and a stroke of even acceleration from rest to the bottom. */
export interface Stroke {
  readonly balanceWeightG: Grams;
  readonly frictionG: Grams;
  /** At the measuring point, as `effectiveMassOf` gives it. */
  readonly effectiveMassG: Grams;
  /** Travel of the measuring point. */
  readonly dipMm: Millimetres;
  readonly strokeMs: Milliseconds;
}

/** Force a stroke takes. */
export interface StrokeForce {
  readonly forceN: Newtons;
  /** Share of it that goes into setting the parts moving. */
  readonly inertialShare: Ratio;
}

/**
 * Force at the measuring point that brings a key down in a given time, evenly accelerated.
 * F = (BW + F)·g + m_eff·2·s/t²; newtons. Balance weight, friction, mass and time above nought. Rigid parts with the jack
 * under the roller all the way: real shanks and keys bend, and in a hard stroke the key lands before the hammer strikes.
 * @source OWN Newton’s second law at the measuring point
 */
export function strokeForceOf({ balanceWeightG, frictionG, effectiveMassG, dipMm, strokeMs }: Stroke): StrokeForce {
  const staticN = ((balanceWeightG + frictionG) * STANDARD_GRAVITY_M_PER_S2) / 1000;
  const inertialN = (effectiveMassG * 2 * dipMm) / strokeMs ** 2;
  return { forceN: newtons(staticN + inertialN), inertialShare: ratio(inertialN / (staticN + inertialN)) };
}

/**
 * Time a key takes to come back by itself, let go at the bottom.
 * t = √(2·s·m_eff/(UW·g)) with UW = BW − F; milliseconds. Rigid parts; no spring, no rebound and no drop of the hammer.
 * @returns `undefined` when friction is as large as the balance weight or larger: the key stays down.
 * @source OWN even acceleration under the up weight
 */
export function returnTimeOf({ balanceWeightG, frictionG, effectiveMassG, dipMm }: Omit<Stroke, 'strokeMs'>): Milliseconds | undefined {
  const upWeightG = balanceWeightG - frictionG;
  if (upWeightG <= 0) return undefined;
  return milliseconds(Math.sqrt((2 * dipMm * effectiveMassG * 1000) / (upWeightG * STANDARD_GRAVITY_M_PER_S2)));
}
