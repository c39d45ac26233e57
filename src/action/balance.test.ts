import { grams } from '#units';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { balanceWeightOf, frictionOf, loadProportionalBalanceOf, thresholdCorrectedFrictionOf, touchReadingsOf } from './index.ts';

const weight = fc.double({ min: 0, max: 200, noNaN: true }).map(grams);
const readings = fc.tuple(weight, weight).map(([a, b]) => ({ downWeightG: grams(Math.max(a, b)), upWeightG: grams(Math.min(a, b)) }));
const scale = fc.double({ min: 0.01, max: 100, noNaN: true });

describe('balance weight and friction', () => {
  it('give the readings back', () => {
    fc.assert(fc.property(readings, (read) => {
      const again = touchReadingsOf({ balanceWeightG: balanceWeightOf(read), frictionG: frictionOf(read) });
      expect(again.downWeightG).toBeCloseTo(read.downWeightG, 10);
      expect(again.upWeightG).toBeCloseTo(read.upWeightG, 10);
    }));
  });

  it('scale with the grams', () => {
    fc.assert(fc.property(readings, weight, scale, (read, front, c) => {
      const scaled = { downWeightG: grams(c * read.downWeightG), upWeightG: grams(c * read.upWeightG) };
      const same = (actual: number, expected: number): void => { expect(Math.abs(actual - c * expected)).toBeLessThanOrEqual(1e-10 * c * 400); };
      same(balanceWeightOf(scaled), balanceWeightOf(read));
      same(frictionOf(scaled), frictionOf(read));
      same(thresholdCorrectedFrictionOf({ ...scaled, stepG: grams(c) }), thresholdCorrectedFrictionOf({ ...read, stepG: grams(1) }));
      same(loadProportionalBalanceOf({ ...scaled, frontWeightG: grams(c * front) }) ?? Number.NaN, loadProportionalBalanceOf({ ...read, frontWeightG: front }) ?? Number.NaN);
    }));
  });

  it('undo a loss that grows with the load', () => {
    fc.assert(fc.property(fc.double({ min: 20, max: 200, noNaN: true }), fc.double({ min: 0.5, max: 1, noNaN: true }), fc.double({ min: -20, max: 20, noNaN: true }), (load, efficiency, front) => {
      const read = { downWeightG: grams(load / efficiency - front), upWeightG: grams(load * efficiency - front) };
      expect(loadProportionalBalanceOf({ ...read, frontWeightG: grams(front) })).toBeCloseTo(load - front, 9);
    }));
  });

  it('leave the load-proportional balance never above the mean, and open where nothing explains the readings', () => {
    fc.assert(fc.property(readings, weight, (read, front) => {
      expect(loadProportionalBalanceOf({ ...read, frontWeightG: front }) ?? Number.NaN).toBeLessThanOrEqual(balanceWeightOf(read) + 1e-9);
    }));
    expect(loadProportionalBalanceOf({ downWeightG: grams(49), upWeightG: grams(26), frontWeightG: grams(-27) })).toBeUndefined();
  });

  it('find the true friction of keys read in whole steps, on average', () => {
    const seed = Math.floor(Math.random() * 2 ** 31);
    const [draw] = fc.sample(fc.array(fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true }), { minLength: 4000, maxLength: 4000 }), { numRuns: 1, seed });
    const errors = (draw ?? []).map((chance, index) => {
      const balance = 37 + chance;
      const friction = 11 + ((index * 0.618034) % 1);
      const read = { downWeightG: grams(Math.ceil(balance + friction)), upWeightG: grams(Math.floor(balance - friction)) };
      return thresholdCorrectedFrictionOf({ ...read, stepG: grams(1) }) - friction;
    });
    const mean = errors.reduce((sum, error) => sum + error, 0) / errors.length;
    expect(Math.abs(mean), `seed ${String(seed)}`).toBeLessThan(0.04);
  });
});
