/**
 * Solves A·x = b for a symmetric positive definite matrix, given as rows one after the other, by Cholesky's factors A = L·Lᵀ.
 * `undefined` where the matrix is not positive definite to working precision. @source GOLUB-VAN-LOAN
 */
export function solvePositive(matrix: Float64Array, right: ArrayLike<number>): Float64Array | undefined {
  const lower = choleskyOf(matrix, right.length);
  return lower === undefined ? undefined : backThrough(lower, right);
}

/** Inverse of a symmetric positive definite matrix, rows one after the other; `undefined` where it is none. @source GOLUB-VAN-LOAN */
export function inverseOfPositive(matrix: Float64Array): Float64Array | undefined {
  const size = Math.sqrt(matrix.length);
  const lower = choleskyOf(matrix, size);
  if (lower === undefined) return undefined;
  const inverse = new Float64Array(matrix.length);
  for (let column = 0; column < size; column++) {
    inverse.set(backThrough(lower, Float64Array.from({ length: size }, (_, row) => Number(row === column))), column * size);
  }
  return inverse;
}

function choleskyOf(matrix: Float64Array, size: number): Float64Array | undefined {
  const lower = new Float64Array(size * size);
  for (let row = 0; row < size; row++) {
    for (let column = 0; column <= row; column++) {
      let left = matrix[row * size + column] ?? 0;
      for (let k = 0; k < column; k++) left -= (lower[row * size + k] ?? 0) * (lower[column * size + k] ?? 0);
      if (column < row) lower[row * size + column] = left / (lower[column * size + column] ?? 0);
      else if (left > 0) lower[row * size + row] = Math.sqrt(left);
      else return undefined;
    }
  }
  return lower;
}

function backThrough(lower: Float64Array, right: ArrayLike<number>): Float64Array {
  const size = right.length;
  const x = Float64Array.from(right);
  for (let row = 0; row < size; row++) {
    for (let k = 0; k < row; k++) x[row] = (x[row] ?? 0) - (lower[row * size + k] ?? 0) * (x[k] ?? 0);
    x[row] = (x[row] ?? 0) / (lower[row * size + row] ?? 1);
  }
  for (let row = size - 1; row >= 0; row--) {
    for (let k = row + 1; k < size; k++) x[row] = (x[row] ?? 0) - (lower[k * size + row] ?? 0) * (x[k] ?? 0);
    x[row] = (x[row] ?? 0) / (lower[row * size + row] ?? 1);
  }
  return x;
}
