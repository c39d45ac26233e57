import { mean, standardDeviation } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { normalColumn, randomFrom, seededRandom } from './random.ts';
import { normalProbabilityOf } from './index.ts';

const RUNS = 200_000;

describe('randomness', () => {
  it('is xoshiro128**: first words from the state 1, 2, 3, 4, as a public library of generators tests them (from memory)', () => {
    const { bits } = randomFrom([1, 2, 3, 4]);
    expect([bits(), bits(), bits(), bits()]).toEqual([11520, 0, 5927040, 70819200]);
  });

  it('comes again with its seed and not with another', () => {
    const first = (seed: number) => normalColumn(5, seededRandom(seed)).join();
    expect(first(7)).toBe(first(7));
    expect(first(7)).not.toBe(first(8));
  });

  it('is normal: mean, spread and tails', () => {
    const column = normalColumn(RUNS, seededRandom(11));
    const list = [...column];
    expect(Math.abs(mean(list))).toBeLessThan(4 / Math.sqrt(RUNS));
    expect(Math.abs(standardDeviation(list) - 1)).toBeLessThan(4 / Math.sqrt(2 * RUNS));
    for (const z of [-2, -1, 0, 1.5]) {
      const p = normalProbabilityOf(z);
      expect(Math.abs(list.filter((x) => x <= z).length / RUNS - p)).toBeLessThan(4 * Math.sqrt((p * (1 - p)) / RUNS));
    }
  });
});
