import { betaProbabilityOf, logBetaOf, normalDensityOf, normalProbabilityOf } from '#numerics';

/** Hours of a task as three points, low ≤ likely ≤ high. */
export interface ThreePoints {
  readonly low: number;
  readonly likely: number;
  readonly high: number;
}

/** Shape of the beta distribution of a three-point estimate; α + β = 6, each from 1 to 5. */
export interface PertShape {
  readonly alpha: number;
  readonly beta: number;
}

/** Mean (a + 4m + b)/6 of three points, in their unit. @source PERT-1959 */
export function pertMeanOf({ low, likely, high }: ThreePoints): number {
  return (low + 4 * likely + high) / 6;
}

/** Standard deviation √((μ − a)(b − μ)/7) of the beta distribution through three points; not the classic (b − a)/6. @source PERT-1959 beta form */
export function pertSdOf(points: ThreePoints): number {
  const mean = pertMeanOf(points);
  return Math.sqrt(Math.max(0, (mean - points.low) * (points.high - mean)) / 7);
}

/** α = 1 + 4(m − a)/(b − a), β = 6 − α; undefined where the three points are one. @source PERT-1959 beta form */
export function pertShapeOf({ low, likely, high }: ThreePoints): PertShape | undefined {
  if (!(high > low)) return undefined;
  const alpha = 1 + (4 * (likely - low)) / (high - low);
  return { alpha, beta: 6 - alpha };
}

/** Table of the share x of the range that belongs to a normal score z: nodes every 1/16 from −6 to 6, with slopes. */
export interface QuantileTable {
  readonly values: Float64Array;
  readonly slopes: Float64Array;
}

/** Nodes per unit of z, and the largest z of the table; figures beyond, two in a thousand million, stand at its end. */
export const NODES_PER_UNIT = 16;
/** Largest normal score of the table. */
export const LARGEST_SCORE = 6;
const HALF = NODES_PER_UNIT * LARGEST_SCORE;

/**
 * x(z) with I_x(α, β) = Φ(z). Between nodes a cubic through values and slopes is true to 1e-6 of the range.
 * The upper half is the lower half of the mirrored distribution, so that both tails keep their accuracy.
 * @source OWN inversion by Newton’s method in ln x
 */
export function quantileTableOf({ alpha, beta }: PertShape): QuantileTable {
  const values = new Float64Array(2 * HALF + 1);
  const slopes = new Float64Array(2 * HALF + 1);
  fillLowerHalf({ alpha, beta }, (index, x, slope) => { values[index] = x; slopes[index] = slope; });
  fillLowerHalf({ alpha: beta, beta: alpha }, (index, x, slope) => { values[2 * HALF - index] = 1 - x; slopes[2 * HALF - index] = slope; });
  return { values, slopes };
}

function fillLowerHalf({ alpha, beta }: PertShape, put: (index: number, x: number, slope: number) => void): void {
  const logBeta = logBetaOf(alpha, beta);
  let logX = (Math.log(normalProbabilityOf(-LARGEST_SCORE) * alpha) + logBeta) / alpha;
  for (let index = 0; index <= HALF; index += 1) {
    const z = index / NODES_PER_UNIT - LARGEST_SCORE;
    const wanted = normalProbabilityOf(z);
    let density = 0;
    for (let step = 0; step < 40; step += 1) {
      const x = Math.exp(logX);
      const reached = betaProbabilityOf(x, alpha, beta);
      density = Math.exp((alpha - 1) * logX + (beta - 1) * Math.log1p(-x) - logBeta);
      const change = (Math.log(wanted / reached) * reached) / (x * density);
      logX = Math.min(logX + change, -1e-12);
      if (Math.abs(change) < 1e-13) break;
    }
    put(index, Math.exp(logX), normalDensityOf(z) / density);
  }
}

/** The share of the range at a normal score. */
export function shareAt({ values, slopes }: QuantileTable, z: number): number {
  const place = Math.min(Math.max((z + LARGEST_SCORE) * NODES_PER_UNIT, 0), 2 * HALF - 1e-9);
  const index = Math.floor(place);
  const t = place - index;
  const [from, to] = [values[index] ?? 0, values[index + 1] ?? 0];
  const [rise, fall] = [(slopes[index] ?? 0) / NODES_PER_UNIT, (slopes[index + 1] ?? 0) / NODES_PER_UNIT];
  const step = to - from;
  return from + t * (rise + t * (3 * step - 2 * rise - fall + t * (rise + fall - 2 * step)));
}
