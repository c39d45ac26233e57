import { Matrix, SingularValueDecomposition } from 'ml-matrix';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { linearFitOf, studentFactorOf } from './index.ts';

describe('a fit linear in its coefficients', () => {
  // NIST-STRD NoInt1: y = 130…140 on x = 60…70.
  it('gives the certified values of NIST StRD NoInt1', () => {
    const x = Array.from({ length: 11 }, (_, i) => 60 + i);
    const fit = linearFitOf(x.map((one) => [one]), x.map((one) => one + 70));
    expect(fit?.coefficients[0]).toBeCloseTo(2.07438016528926, 12);
    expect(fit?.uncertainties[0]).toBeCloseTo(0.0165289256198347, 12);
    expect(fit?.residual).toBeCloseTo(3.56753034006338, 12);
    expect(fit?.freedom).toBe(10);
  });

  it('agrees with the least squares of ml-matrix by singular values', () => {
    const cell = fc.double({ min: -100, max: 100, noNaN: true });
    fc.assert(fc.property(fc.array(fc.tuple(cell, cell, cell), { minLength: 5, maxLength: 12 }), (data) => {
      const rows = data.map(([a, b]) => [a, b]);
      const singular = new SingularValueDecomposition(new Matrix(rows));
      fc.pre(Math.min(...singular.diagonal) > 1 && singular.condition < 1000);
      const theirs = singular.solve(Matrix.columnVector(data.map(([, , y]) => y))).to1DArray();
      linearFitOf(rows, data.map(([, , y]) => y))?.coefficients.forEach((own, j) => { expect(own).toBeCloseTo(theirs[j] ?? Number.NaN, 7); });
    }));
  });

  it('answers nothing for columns that depend on each other, or with no value to spare', () => {
    expect(linearFitOf([[1, 2], [2, 4], [3, 6]], [1, 2, 3])).toBeUndefined();
    expect(linearFitOf([[1]], [1])).toBeUndefined();
    expect(linearFitOf([[0], [0]], [1, 2])).toBeUndefined();
  });
});

describe('Student’s factor', () => {
  // JCGM 100:2008, table G.2, 95 %.
  it.each([[1, 12.71], [2, 4.30], [3, 3.18], [4, 2.78], [5, 2.57], [10, 2.23], [20, 2.09], [50, 2.01]] as const)('is that of table G.2 of JCGM 100 for %d degrees of freedom', (freedom, factor) => {
    expect(studentFactorOf(freedom)).toBeCloseTo(factor, 2);
  });
});
