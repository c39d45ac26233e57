import fc from 'fast-check';
import { Matrix, solve } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { solveSymmetricBanded, whittakerSmooth } from './index.ts';

/** (W + λ DᵀD) z = W y, written out in full and solved by a general library. */
function denseSmooth(values: readonly number[], weights: readonly number[], lambda: number): readonly number[] {
  const n = values.length;
  const differences = Matrix.zeros(Math.max(n - 3, 0), n);
  for (let row = 0; row < n - 3; row += 1) [-1, 3, -3, 1].forEach((coefficient, k) => differences.set(row, row + k, coefficient));
  const penalty = n > 3 ? differences.transpose().mmul(differences).mul(lambda) : Matrix.zeros(n, n);
  const weighed = Matrix.columnVector(values.map((value, index) => value * (weights[index] ?? 0)));
  return solve(Matrix.diag([...weights]).add(penalty), weighed).to1DArray();
}

const close = (actual: readonly number[] | undefined, expected: readonly number[], tolerance: number): void => {
  expect(actual).toHaveLength(expected.length);
  actual?.forEach((value, index) => { expect(Math.abs(value - (expected[index] ?? Number.NaN))).toBeLessThan(tolerance); });
};

/** Gaps within the row only: beyond its ends both solvers are at the mercy of rounding. */
const rows = fc.array(fc.record({ value: fc.double({ min: -100, max: 100, noNaN: true }), weight: fc.constantFrom(0, 0.25, 1, 2) }), { minLength: 4, maxLength: 40 })
  .filter((row) => row.filter(({ weight }) => weight > 0).length >= Math.max(3, row.length / 2) && row[0]?.weight !== 0 && row.at(-1)?.weight !== 0);

describe('the Whittaker smoother', () => {
  it('solves as a dense library does', () => {
    fc.assert(fc.property(rows, fc.constantFrom(0.1, 1, 100, 1e4), (row, lambda) => {
      const values = row.map(({ value }) => value);
      const weights = row.map(({ weight }) => weight);
      close(whittakerSmooth(values, weights, lambda), denseSmooth(values, weights, lambda), 1e-5);
    }), { numRuns: 60 });
  });

  it('solves as a dense library does over 88 keys', () => {
    const values = Array.from({ length: 88 }, (_, n) => 11.074 - 0.074 * n + 0.4 * Math.sin(n * n));
    const weights = values.map((_, n) => (n % 13 === 5 ? 0 : 1));
    for (const lambda of [1e2, 1e4]) close(whittakerSmooth(values, weights, lambda), denseSmooth(values, weights, lambda), 1e-7);
  });

  it('lets a quadratic pass at any strength, gaps and all', () => {
    const quadratic = Array.from({ length: 88 }, (_, n) => 11 - 0.08 * n + 2e-4 * n * n);
    const weights = quadratic.map((_, n) => (n > 20 && n < 30 ? 0 : 1));
    for (const lambda of [1e-3, 1, 1e4, 1e8]) close(whittakerSmooth(quadratic, weights, lambda), quadratic, 1e-6);
  });

  it('tends to the least-squares quadratic at great strength', () => {
    const values = Array.from({ length: 30 }, (_, n) => Math.cos(n * 5) + n / 10);
    const design = new Matrix(values.map((_, n) => [1, n, n * n]));
    const fitted = design.mmul(solve(design, Matrix.columnVector(values))).to1DArray();
    close(whittakerSmooth(values, values.map(() => 1), 1e8), fitted, 1e-3);
  });

  it('returns the values at no strength, and in rows too short to bend', () => {
    expect(whittakerSmooth([3, 1, 4, 1, 5], [1, 1, 1, 1, 1], 0)).toEqual([3, 1, 4, 1, 5]);
    expect(whittakerSmooth([3, 1, 4], [1, 2, 3], 100)).toEqual([3, 1, 4]);
  });

  it('leaves what is weighed with 0 out of account', () => {
    const weights = [1, 1, 0, 1, 1, 1];
    expect(whittakerSmooth([1, 2, 1e9, 4, 5, 6], weights, 10)).toEqual(whittakerSmooth([1, 2, 0, 4, 5, 6], weights, 10));
  });

  it('says when the weights leave the curve open', () => {
    expect(whittakerSmooth([1, 2, 3, 4, 5], [0, 0, 0, 0, 0], 10)).toBeUndefined();
    expect(whittakerSmooth([1, 2, 3, 4, 5], [1, 1, 1, 0, 1], 0)).toBeUndefined();
  });
});

describe('the banded solver', () => {
  it('solves as a dense library does for any width of band', () => {
    fc.assert(fc.property(fc.integer({ min: 1, max: 12 }), fc.integer({ min: 1, max: 5 }), fc.infiniteStream(fc.double({ min: -1, max: 1, noNaN: true })), (n, width, stream) => {
      const next = (): number => stream.next().value as number;
      const bands = Array.from({ length: width }, (_, k) => Float64Array.from({ length: n }, () => (k === 0 ? 2 * width + next() : next())));
      const full = Matrix.zeros(n, n);
      bands.forEach((band, k) => { for (let i = 0; i + k < n; i += 1) { full.set(i + k, i, band[i] ?? 0); full.set(i, i + k, band[i] ?? 0); } });
      const right = Float64Array.from({ length: n }, next);
      close(Array.from(solveSymmetricBanded(bands, right) ?? []), solve(full, Matrix.columnVector([...right])).to1DArray(), 1e-10);
    }));
  });

  it('says when the matrix is not positive definite', () => {
    expect(solveSymmetricBanded([Float64Array.of(1, 1), Float64Array.of(2, 0)], Float64Array.of(1, 1))).toBeUndefined();
    expect(solveSymmetricBanded([Float64Array.of(1, 1), Float64Array.of(1, 0)], Float64Array.of(1, 1))).toBeUndefined();
  });
});
