import { runOperation } from '#operation';
import { mustBe } from '#result';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { smoothCurveOperation } from './index.ts';

const smooth = (raw: unknown): readonly number[] => mustBe(runOperation(smoothCurveOperation, raw)).smoothed;
const refusals = (raw: unknown): readonly string[] => {
  const result = runOperation(smoothCurveOperation, raw);
  return result.ok ? [] : result.issues.map(({ code, path }) => `${code} ${path}`);
};
const row = fc.array(fc.double({ min: -100, max: 100, noNaN: true }), { minLength: 4, maxLength: 88 });

describe('a smooth curve', () => {
  it('takes a null as a weight of nothing', () => {
    expect(smooth({ values: [11, 10.9, null, 10.2, 10], lambda: 100 })).toEqual(smooth({ values: [11, 10.9, 77, 10.2, 10], weights: [1, 1, 0, 1, 1], lambda: 100 }));
  });

  it('keeps the sum, and with it the level of the instrument', () => {
    fc.assert(fc.property(row, fc.constantFrom(1, 100, 1e4), (values, lambda) => {
      const sum = (list: readonly number[]): number => list.reduce((total, value) => total + value, 0);
      expect(sum(smooth({ values, lambda }))).toBeCloseTo(sum(values), 5);
    }));
  });

  it('scales with the values and runs the same from the treble', () => {
    fc.assert(fc.property(row, fc.constantFrom(0.5, 3, -7), (values, c) => {
      const one = smooth({ values, lambda: 50 });
      const close = (other: readonly number[], scale: number): void => { other.forEach((value, index) => { expect(value).toBeCloseTo(scale * (one[index] ?? Number.NaN), 6); }); };
      close(smooth({ values: values.map((value) => c * value), lambda: 50 }), c);
      close([...smooth({ values: [...values].reverse(), lambda: 50 })].reverse(), 1);
    }));
  });

  it('takes a heavy row of 100 000 values', () => {
    expect(smooth({ values: Array.from({ length: 100_000 }, (_, n) => n % 7), lambda: 1e4 })).toHaveLength(100_000);
  });

  it.each([
    [{ values: [], lambda: 1 }, ['length values']],
    [{ values: [1, 2, 3], weights: [1, 1], lambda: 1 }, ['length weights']],
    [{ values: [1, 2, 3, 4], weights: [1, 1, -1, 1], lambda: 1 }, ['range weights[2]']],
    [{ values: [1, null, 3, null, null], lambda: 1 }, ['unsolvable values']],
    [{ values: [1, null, 3], lambda: 1 }, ['unsolvable values']],
    [{ values: [1, 2, 3, 4, 5], weights: [0, 0, 0, 1, 1], lambda: 1 }, ['unsolvable weights']],
    [{ values: [1, 2, 3, 4, null], lambda: 0 }, ['unsolvable lambda']],
    [{ values: [1, 2, 3, 4], lambda: -1 }, ['range lambda']],
  ])('refuses %j by naming the field', (raw, expected) => {
    expect(refusals(raw)).toEqual(expected);
  });
});
