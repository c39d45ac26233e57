import { solveSymmetricBanded } from './banded.ts';

/** Third differences: a quadratic passes unpunished. */
const THIRD_DIFFERENCE = [-1, 3, -3, 1] as const;

/**
 * Whittaker smoother with third differences.
 * Minimises Σ wᵢ (yᵢ − zᵢ)² + λ Σ (Δ³z)², that is (W + λ DᵀD) z = W y, in O(n).
 *
 * y values; w weights ≥ 0, 0 where a value is missing (its y is then never read into the answer);
 * λ ≥ 0: 0 returns y, large λ tends to the weighted quadratic. With three values or fewer there is no third
 * difference and z = y. Ignores that the places may be unevenly spaced.
 *
 * @returns z, or `undefined` when the weights leave z open: fewer than three values weigh, or λ = 0 and one is missing.
 * @source EILERS-WHITTAKER
 */
export function whittakerSmooth(values: readonly number[], weights: readonly number[], lambda: number): readonly number[] | undefined {
  const bands = THIRD_DIFFERENCE.map(() => new Float64Array(values.length));
  weights.forEach((weight, index) => { add(bands, 0, index, weight); });
  for (let row = 0; row + 3 < values.length; row += 1) addDifference(bands, row, lambda);
  const weighed = Float64Array.from(values, (value, index) => ((weights[index] ?? 0) === 0 ? 0 : (weights[index] ?? 0) * value));
  const smoothed = solveSymmetricBanded(bands, weighed);
  return smoothed === undefined ? undefined : Array.from(smoothed);
}

/** Adds λ dᵀd of one row of D. */
function addDifference(bands: readonly Float64Array[], row: number, lambda: number): void {
  for (let a = 0; a < 4; a += 1) {
    for (let b = 0; b <= a; b += 1) add(bands, a - b, row + b, lambda * (THIRD_DIFFERENCE[a] ?? 0) * (THIRD_DIFFERENCE[b] ?? 0));
  }
}

function add(bands: readonly Float64Array[], band: number, index: number, amount: number): void {
  const diagonal = bands[band];
  if (diagonal !== undefined) diagonal[index] = (diagonal[index] ?? 0) + amount;
}
