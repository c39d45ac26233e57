import { runOperation } from '#operation';
import { mustBe } from '#result';
import fc from 'fast-check';
import * as outside from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { evennessOf, evennessOperation } from './index.ts';

const band = { target: 49, tolerance: 2 };
const refusals = (raw: unknown): readonly string[] => {
  const result = runOperation(evennessOperation, raw);
  return result.ok ? [] : result.issues.map(({ code, path }) => `${code} ${path}`);
};

describe('the count inside', () => {
  it('takes a keyboard that runs from 47 to 50 g as inside 49 ± 2 (common practice, no source), ends included', () => {
    expect(evennessOf({ values: [47, 48, 49, 50, 51, 46.99, 51.01], step: 1, band }).inside).toBe(5);
  });

  it('keeps the ends in whatever their decimals come to in binary', () => {
    fc.assert(fc.property(fc.integer({ min: 100, max: 900 }), fc.integer({ min: 1, max: 99 }), (target, tolerance) => {
      const at = (tenths: number): number => tenths / 10;
      const values = [at(target - tolerance), at(target + tolerance), at(target - tolerance - 1), at(target + tolerance + 1)];
      expect(evennessOf({ values, step: 0.1, band: { target: at(target), tolerance: at(tolerance) } }).inside).toBe(2);
    }));
  });

  it('narrows the band by the uncertainty at both ends, to nothing at last (JCGM 106:2012, guarded acceptance)', () => {
    const values = [49, 49.5, 48.5, 49.6, 48.4, 51];
    expect(evennessOf({ values, step: 1, band, uncertainty: 1.5 })).toMatchObject({ inside: 6, insideGuarded: 3 });
    expect(evennessOf({ values, step: 1, band, uncertainty: 2.5 }).insideGuarded).toBe(0);
  });

  it('never counts a key without a number', () => {
    expect(mustBe(runOperation(evennessOperation, { values: [49, null, 49], ...band, step: 1 }))).toMatchObject({ count: 3, measured: 2, inside: 2 });
  });
});

describe('the fence', () => {
  it('does not cry wolf where whole grams leave no spread at all', () => {
    const values = [49, 49, 49, 48, 49, 50, 49, 47, 49, 50, 49, 48, 49, 51, 49];
    expect(outside.medianAbsoluteDeviation(values)).toBe(0);
    expect(evennessOf({ values, step: 1 }).outliers).toEqual([]);
  });

  it('stands three and a half steps, or as many robust deviations, from the median', () => {
    const level = Array.from({ length: 9 }, () => 49);
    expect(evennessOf({ values: [...level, 52.5, 45.5], step: 1 }).outliers).toEqual([]);
    expect(evennessOf({ values: [...level, 52.51, 45.49], step: 1 }).outliers).toEqual([9, 10]);
    const spread = [44, 45, 46, 47, 48, 49, 50, 51, 52, 53, 54];
    const deviations = outside.medianAbsoluteDeviation(spread) * 1.4826;
    expect(evennessOf({ values: [...spread, 49 - 3.6 * deviations, 49 + 3.6 * deviations], step: 1 }).outliers).toEqual([11, 12]);
    expect(evennessOf({ values: [...spread, 49 - 3.4 * deviations, 49 + 3.4 * deviations], step: 1 }).outliers).toEqual([]);
  });

  it('finds the key that stands out, nulls keeping their places', () => {
    expect(evennessOf({ values: [49, null, 48, 57, 49, 50, 49, 40], step: 1 }).outliers).toEqual([3, 7]);
  });
});

describe('the step between neighbours', () => {
  it('is the largest, with its place, and the median of all', () => {
    expect(evennessOf({ values: [49, 50, 46, 46, 47], step: 1 })).toMatchObject({ largestStep: 4, largestStepIndex: 1, medianStep: 1 });
  });

  it('does not reach over a key without a number', () => {
    expect(evennessOf({ values: [49, null, 60, 61], step: 1 })).toMatchObject({ largestStep: 1, largestStepIndex: 2 });
    expect(evennessOf({ values: [49, null, 60], step: 1 }).largestStep).toBeUndefined();
  });
});

describe('the capability figure', () => {
  it('is Ppk of what lies inside the fence', () => {
    const values = [49.2, 48.1, 50.3, 49.5, 47.9, 49.9, 70];
    const fenced = values.slice(0, -1);
    const [mean, sd] = [outside.mean(fenced), outside.sampleStandardDeviation(fenced)];
    expect(evennessOf({ values, step: 0.1, band }).capability).toBeCloseTo(Math.min(51 - mean, mean - 47) / (3 * sd), 10);
  });

  it('does not grow beyond what the step of the weights can tell', () => {
    expect(evennessOf({ values: [49, 49, 49, 49], step: 1, band }).capability).toBeCloseTo(2 / (3 / Math.sqrt(12)), 12);
  });
});

describe('by its nature', () => {
  const rows = fc.array(fc.integer({ min: 30, max: 70 }), { minLength: 1, maxLength: 88 });

  it('scales with the unit and forgets the order but for the steps', () => {
    fc.assert(fc.property(rows, fc.constantFrom(0.25, 2, 8), (values, c) => {
      const one = evennessOf({ values, step: 1, band, uncertainty: 0.5 });
      const other = evennessOf({ values: values.map((value) => c * value), step: c, band: { target: c * 49, tolerance: c * 2 }, uncertainty: c * 0.5 });
      expect(other).toMatchObject({ inside: one.inside, insideGuarded: one.insideGuarded, outliers: one.outliers, median: c * one.median });
      expect(other.capability).toBeCloseTo(one.capability ?? Number.NaN, 10);
      const turned = evennessOf({ values: [...values].reverse(), step: 1, band });
      expect(turned).toMatchObject({ inside: one.inside, median: one.median, ...(one.largestStep === undefined ? {} : { largestStep: one.largestStep }) });
    }));
  });
});

describe('what it refuses, by name', () => {
  it.each([
    [{ values: Array.from({ length: 85 }, () => 49), step: 1, keys: 88 }, ['length values']],
    [{ values: [], step: 1 }, ['length values']],
    [{ values: [null, null], step: 1 }, ['length values']],
    [{ values: [49, '48'], step: 1 }, ['type values[1]']],
    [{ values: [49, Number.NaN], step: 1 }, ['type values[1]']],
    [{ values: [49], step: 0 }, ['range step']],
    [{ values: [49] }, ['required step']],
    [{ values: [49], step: 1, tolerance: 2 }, ['required target']],
    [{ values: [49], step: 1, target: 49 }, ['required tolerance']],
    [{ values: [49], step: 1, uncertainty: 1 }, ['required target']],
    [{ values: [49], step: 1, target: 49, tolerance: -1 }, ['range tolerance']],
  ])('%j', (raw, expected) => {
    expect(refusals(raw)).toEqual(expected);
  });

  it('takes 85 values where the keyboard has 85 keys', () => {
    expect(refusals({ values: Array.from({ length: 85 }, () => 49), step: 1, keys: 85 })).toEqual([]);
  });
});
