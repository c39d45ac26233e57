import { solveSymmetricBanded } from './banded.ts';
import { sumOf } from './statistics.ts';

/** A fit that is linear in its coefficients, with how sure each of them is. */
export interface LinearFit {
  readonly coefficients: readonly number[];
  /** Standard uncertainties of the coefficients, from the scatter about the fit. */
  readonly uncertainties: readonly number[];
  /** Standard deviation of the values about the fit. */
  readonly residual: number;
  /** Values less coefficients: at least 1. */
  readonly freedom: number;
}

/**
 * Ordinary least squares: minimises Σ(yᵢ − Σⱼ xᵢⱼ·cⱼ)² by its normal equations. A constant is a column of ones.
 * s² = Σr²/(m − n), u(cⱼ) = s·√((XᵀX)⁻¹ⱼⱼ). Meant for a few coefficients of like size.
 *
 * @returns `undefined` where there are not more values than coefficients, or the columns depend on each other.
 * @source JCGM-100 annex H.3
 */
export function linearFitOf(rows: readonly (readonly number[])[], values: readonly number[]): LinearFit | undefined {
  const count = rows[0]?.length ?? 0;
  const freedom = rows.length - count;
  if (count === 0 || freedom < 1) return undefined;
  const solve = solverOf(rows, count);
  const moments = Array.from({ length: count }, (_, j) => sumOf(rows.map((row, i) => (row[j] ?? 0) * (values[i] ?? 0))));
  const coefficients = solve(moments);
  const inverse = Array.from({ length: count }, (_, j) => solve(Array.from({ length: count }, (__, k) => (j === k ? 1 : 0)))?.[j]);
  if (coefficients === undefined || inverse.some((entry) => entry === undefined)) return undefined;
  const residuals = rows.map((row, i) => (values[i] ?? 0) - sumOf(row.map((x, j) => x * (coefficients[j] ?? 0))));
  const residual = Math.sqrt(sumOf(residuals.map((r) => r * r)) / freedom);
  return { coefficients, uncertainties: inverse.map((entry = 0) => residual * Math.sqrt(entry)), residual, freedom };
}

/** Solves XᵀX·c = b, the columns scaled to unit length first so that their units do not matter. */
function solverOf(rows: readonly (readonly number[])[], count: number): (right: readonly number[]) => readonly number[] | undefined {
  const product = (a: number, b: number): number => sumOf(rows.map((row) => (row[a] ?? 0) * (row[b] ?? 0)));
  const lengths = Array.from({ length: count }, (_, j) => Math.sqrt(product(j, j)));
  const scale = (j: number): number => lengths[j] ?? Number.NaN;
  const bands = Array.from({ length: count }, (_, k) => Float64Array.from({ length: count - k }, (__, i) => product(i, i + k) / (scale(i) * scale(i + k))));
  return (right) => {
    const solved = solveSymmetricBanded(bands, Float64Array.from(right, (b, j) => b / scale(j)));
    return solved === undefined ? undefined : Array.from(solved, (c, j) => c / scale(j));
  };
}
