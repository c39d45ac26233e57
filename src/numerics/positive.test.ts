import * as fc from 'fast-check';
import { Matrix } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { inverseOfPositive, solvePositive } from '#numerics';

const squares = fc.integer({ min: 1, max: 6 }).chain((size) => fc.array(fc.double({ min: -2, max: 2, noNaN: true }), { minLength: size * size, maxLength: size * size }));

/** M·Mᵀ + I is positive definite whatever M is. */
function positiveOf(list: readonly number[]): Matrix {
  const size = Math.sqrt(list.length);
  const square = Matrix.from1DArray(size, size, [...list]);
  return square.mmul(square.transpose()).add(Matrix.eye(size));
}

describe('symmetric positive definite systems', () => {
  it('solve to what goes in, as a general matrix library multiplies', () => {
    fc.assert(fc.property(squares, (list) => {
      const matrix = positiveOf(list);
      const right = Array.from({ length: matrix.rows }, (_, at) => at + 1);
      const x = solvePositive(Float64Array.from(matrix.to1DArray()), right);
      expect(x).toBeDefined();
      const again = matrix.mmul(Matrix.columnVector([...(x ?? [])])).to1DArray();
      for (const [at, value] of right.entries()) expect(again[at]).toBeCloseTo(value, 8);
    }));
  });

  it('have an inverse, as a general matrix library multiplies', () => {
    fc.assert(fc.property(squares, (list) => {
      const matrix = positiveOf(list);
      const inverse = inverseOfPositive(Float64Array.from(matrix.to1DArray()));
      const unit = matrix.mmul(Matrix.from1DArray(matrix.rows, matrix.rows, [...(inverse ?? [])]));
      expect(Matrix.sub(unit, Matrix.eye(matrix.rows)).norm()).toBeLessThan(1e-8);
    }));
  });

  it('are refused where the matrix is not positive definite', () => {
    expect(solvePositive(Float64Array.from([1, 2, 2, 1]), [1, 1])).toBeUndefined();
    expect(inverseOfPositive(Float64Array.from([0]))).toBeUndefined();
  });
});
