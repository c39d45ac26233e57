import fc from 'fast-check';
import * as outside from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { meanOf, medianOf, quantileOf, scaledMadOf, standardDeviationOf, sumOf } from './index.ts';

const weights = fc.array(fc.double({ min: -200, max: 200, noNaN: true }), { minLength: 1, maxLength: 120 });
const wholeGrams = fc.array(fc.integer({ min: 0, max: 80 }), { minLength: 1, maxLength: 120 });
const rows = fc.oneof(weights, wholeGrams);

describe('statistics beside simple-statistics', () => {
  it('has the same sum and mean', () => {
    fc.assert(fc.property(rows, (row) => {
      expect(sumOf(row)).toBeCloseTo(outside.sum(row), 9);
      expect(meanOf(row)).toBeCloseTo(outside.mean(row), 9);
    }));
  });

  it('has the same median', () => {
    fc.assert(fc.property(rows, (row) => { expect(medianOf(row)).toBeCloseTo(outside.median(row), 10); }));
  });

  it('has quantiles whose half is that median and whose ends are least and greatest, and the quarters R gives of 1 to 4 (type 7, from memory)', () => {
    fc.assert(fc.property(rows, (row) => {
      expect(quantileOf(row, 0.5)).toBeCloseTo(outside.median(row), 9);
      expect([quantileOf(row, 0), quantileOf(row, 1)].map((end) => end + 0)).toEqual([outside.min(row), outside.max(row)].map((end) => end + 0));
    }));
    expect([0.25, 0.5, 0.75].map((share) => quantileOf([4, 1, 3, 2], share))).toEqual([1.75, 2.5, 3.25]);
  });

  it('has the same median absolute deviation, but for its scale', () => {
    const scale = scaledMadOf([-1, 1, 3]) / 2;
    fc.assert(fc.property(rows, (row) => { expect(scaledMadOf(row)).toBeCloseTo(scale * outside.medianAbsoluteDeviation(row), 9); }));
  });

  it('has the same sample standard deviation', () => {
    fc.assert(fc.property(rows.filter((row) => row.length > 1), (row) => { expect(standardDeviationOf(row)).toBeCloseTo(outside.sampleStandardDeviation(row), 8); }));
  });
});

describe('statistics by themselves', () => {
  it('adds what a plain sum loses', () => {
    expect(sumOf([1e16, 1, -1e16])).toBe(1);
  });

  it('leaves its argument alone', () => {
    const row = [3, 1, 2];
    medianOf(row);
    expect(row).toEqual([3, 1, 2]);
  });

  it('scales to the normal standard deviation: half of a normal sample lies within 1/scale of its middle', () => {
    const reach = 2 / scaledMadOf([-1, 1, 3]);
    const panels = 1000;
    const density = (x: number): number => Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI);
    const simpson = Array.from({ length: panels + 1 }, (_, i) => density(-reach + (2 * reach * i) / panels) * (i === 0 || i === panels ? 1 : i % 2 === 1 ? 4 : 2));
    expect((outside.sum(simpson) * 2 * reach) / panels / 3).toBeCloseTo(0.5, 12);
  });

  it('throws on an empty list', () => {
    for (const statistic of [meanOf, medianOf, scaledMadOf, standardDeviationOf]) expect(() => statistic([])).toThrow(RangeError);
  });
});
