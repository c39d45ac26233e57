import { medianOf } from '#numerics';
import fc from 'fast-check';
import { median, medianAbsoluteDeviation } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { expectedByLine, expectedByMedian } from './baseline.ts';
import { medianInPlace } from './median.ts';

const listOf = (count: number, valueAt: (key: number) => number) => Array.from({ length: count }, (_, index) => ({ key: index + 1, value: valueAt(index + 1) }));
const figure = fc.double({ min: -1e6, max: 1e6, noNaN: true });

describe('median in place', () => {
  it('agrees with sorting, whatever the figures', () => {
    fc.assert(fc.property(fc.array(figure, { minLength: 1, maxLength: 80 }), (values) => {
      expect(medianInPlace(Float64Array.from(values), values.length)).toBe(medianOf(values));
    }));
  });

  it('agrees with sorting where many figures are alike', () => {
    fc.assert(fc.property(fc.array(fc.integer({ min: 0, max: 3 }), { minLength: 1, maxLength: 80 }), (values) => {
      expect(medianInPlace(Float64Array.from(values), values.length)).toBe(medianOf(values));
    }));
  });
});

describe('what the neighbours lead one to expect', () => {
  it('is the line itself where they lie on one', () => {
    const expected = expectedByLine(listOf(30, (key) => 40 - 0.25 * key));
    for (const [key, { value, scatter }] of expected) {
      expect(value).toBeCloseTo(40 - 0.25 * key, 10);
      expect(scatter).toBeCloseTo(0, 10);
    }
  });

  // Slope and level as defined, written out with the medians of a general statistics library.
  it('agrees with the definition worked out by a general statistics library', () => {
    fc.assert(fc.property(fc.array(fc.double({ min: 0, max: 90, noNaN: true }), { minLength: 13, maxLength: 13 }), (values) => {
      const others = values.flatMap((value, index) => (index === 6 ? [] : [{ key: index + 1, value }]));
      const slope = median(others.flatMap((a, at) => others.slice(at + 1).map((b) => (b.value - a.value) / (b.key - a.key))));
      const carried = others.map(({ key, value }) => value - slope * (key - 7));
      const expected = expectedByLine(values.map((value, index) => ({ key: index + 1, value }))).get(7);
      expect(expected?.value).toBeCloseTo(median(carried), 9);
      expect(expected?.scatter).toBeGreaterThanOrEqual(1.482602218505602 * medianAbsoluteDeviation(carried) - 1e-9);
    }));
  });

  it('leaves the key itself out', () => {
    const spoilt = listOf(30, (key) => (key === 14 ? 90 : 40));
    expect(expectedByLine(spoilt).get(14)?.value).toBe(40);
  });

  it('is not moved by three faulty neighbours of twelve', () => {
    const spoilt = listOf(30, (key) => ([12, 15, 17].includes(key) ? 90 : 40 - 0.25 * key));
    expect(expectedByLine(spoilt).get(14)?.value).toBeCloseTo(36.5, 10);
  });

  it('moves along with a constant added, and does not mind the order of the list', () => {
    fc.assert(fc.property(fc.array(fc.integer({ min: 0, max: 60 }), { minLength: 6, maxLength: 40 }), fc.integer({ min: -20, max: 20 }), (values, shift) => {
      const list = values.map((value, index) => ({ key: index + 1, value }));
      const shifted = list.map(({ key, value }) => ({ key, value: value + shift })).reverse();
      const before = expectedByLine(list);
      for (const [key, { value }] of expectedByLine(shifted)) expect(value).toBeCloseTo((before.get(key)?.value ?? Number.NaN) + shift, 9);
    }));
  });

  it('says nothing with fewer than five neighbours', () => {
    expect(expectedByLine(listOf(5, () => 40)).size).toBe(0);
    expect(expectedByLine(listOf(6, () => 40)).size).toBe(6);
    expect(expectedByMedian([]).size).toBe(0);
  });

  it('takes the nearest keys, not the nearest places in the list', () => {
    const far = [1, 2, 3, 4, 5, 6, 7, 8, 60, 61, 62, 63, 64, 65, 66, 67].map((key) => ({ key, value: key < 30 ? 10 : 20 }));
    expect(expectedByMedian(far).get(4)?.value).toBe(10);
  });
});
