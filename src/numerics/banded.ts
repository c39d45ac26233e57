/**
 * A symmetric matrix that is nought beyond a few diagonals. `bands[k][i]` holds A(i + k, i):
 * `bands[0]` is the main diagonal, every further entry one diagonal below it.
 */
export type SymmetricBands = readonly Float64Array[];

/**
 * Solves A x = b for a symmetric positive definite banded matrix in O(n·w²) by A = L D Lᵀ, without square roots.
 * No pivoting: none is needed while A is positive definite. Neither argument is changed.
 *
 * @returns x, or `undefined` when A is not positive definite to working precision.
 * @source GOLUB-VAN-LOAN section on banded systems
 */
export function solveSymmetricBanded(bands: SymmetricBands, rightSide: Float64Array): Float64Array | undefined {
  const factors = bands.map((band) => Float64Array.from(band));
  if (!factorise(factors)) return undefined;
  const solution = Float64Array.from(rightSide);
  substitute(factors, solution);
  return solution;
}

const at = (row: Float64Array | undefined, index: number): number => row?.[index] ?? 0;

/** Replaces A by L (below the diagonal) and D (on it). False when a pivot vanishes against its own column. */
function factorise(bands: Float64Array[]): boolean {
  const [diagonal, ...lower] = bands;
  if (diagonal === undefined) return false;
  for (let column = 0; column < diagonal.length; column += 1) {
    const original = at(diagonal, column);
    let pivot = original;
    for (let k = 1; k < bands.length && k <= column; k += 1) pivot -= at(bands[k], column - k) ** 2 * at(diagonal, column - k);
    if (!(pivot > Number.EPSILON * Math.abs(original))) return false;
    diagonal[column] = pivot;
    for (const [offset, band] of lower.entries()) {
      const below = offset + 1;
      if (column + below >= diagonal.length) break;
      let entry = at(band, column);
      for (let k = 1; k + below < bands.length && k <= column; k += 1) {
        entry -= at(bands[k + below], column - k) * at(bands[k], column - k) * at(diagonal, column - k);
      }
      band[column] = entry / pivot;
    }
  }
  return true;
}

/** L y = b downwards, D z = y, Lᵀ x = z upwards, in place. */
function substitute(bands: readonly Float64Array[], x: Float64Array): void {
  for (let i = 0; i < x.length; i += 1) {
    let value = at(x, i);
    for (let k = 1; k < bands.length && k <= i; k += 1) value -= at(bands[k], i - k) * at(x, i - k);
    x[i] = value;
  }
  for (let i = x.length - 1; i >= 0; i -= 1) {
    let value = at(x, i) / at(bands[0], i);
    for (let k = 1; k < bands.length && i + k < x.length; k += 1) value -= at(bands[k], i) * at(x, i + k);
    x[i] = value;
  }
}
