import { whittakerSmooth } from '#numerics';
import { type Result, ok, refuse } from '#result';
import type { Row } from './inside.ts';

export interface SmoothingQuestion {
  /** One value per key, bass to treble; null where there is none. */
  readonly values: Row;
  /** One weight per value, 0 to leave it out; all 1 when left out. A null value weighs 0 whatever stands here. */
  readonly weights?: readonly number[];
  /** Strength: 1e2 follows sections, 1e4 is nearly one quadratic. */
  readonly lambda: number;
}

/**
 * A smooth curve through a row, for a target that keeps the level of what was measured.
 * (W + λ DᵀD) z = W y, D third differences; a gap is bridged. See `whittakerSmooth`.
 *
 * Refuses weights of another count than the values, and rows that leave the curve open: with λ = 0 every value must
 * weigh, in rows of four and more at least three must, in shorter rows all. Ignores breaks: smooth each section alone.
 * @source EILERS-WHITTAKER
 */
export function smoothCurve({ values, weights, lambda }: SmoothingQuestion): Result<readonly number[]> {
  if (weights !== undefined && weights.length !== values.length) {
    return refuse({ code: 'length', path: 'weights', given: weights.length, allowed: `${String(values.length)} entries, one per value`, params: { reason: 'weightsCount', count: values.length } });
  }
  const effective = values.map((value, index) => (value === null ? 0 : (weights?.[index] ?? 1)));
  const known = effective.filter((weight) => weight > 0).length;
  const needed = values.length < 4 ? values.length : 3;
  if (known < needed) {
    return refuse({ code: 'unsolvable', path: weights === undefined ? 'values' : 'weights', given: known, allowed: `at least ${String(needed)} values with a weight above 0`, params: { reason: 'tooFewWeigh', min: needed } });
  }
  if (lambda === 0 && known < values.length) {
    return refuse({ code: 'unsolvable', path: 'lambda', given: lambda, allowed: 'more than 0 where values are missing', params: { reason: 'gapNeedsStrength' } });
  }
  const smoothed = whittakerSmooth(values.map((value) => value ?? 0), effective, lambda);
  if (smoothed !== undefined) return ok(smoothed);
  return refuse({ code: 'unsolvable', path: 'lambda', given: lambda, allowed: 'a strength nearer to the weights: these differ too widely to solve', params: { reason: 'strengthFarFromWeights' } });
}
