import type { KeyPlan } from '#action';
import { grams } from '#units';
import { describe, expect, it } from 'vitest';
import { expectedEntriesOf } from './expected-entries.ts';

const touch = { downWeightG: grams(49.126), upWeightG: grams(25), balanceWeightG: grams(37.063), frictionG: grams(12.063), hammerWeightG: grams(8.5), frontWeightG: grams(24) };
const plan = (key: number, part: Partial<KeyPlan>): KeyPlan => ({ key, verdict: 'planned', work: [], minutes: 2, partsMinor: 0, after: touch, marginG: grams(1), ...part });
const done = (changes: KeyPlan['work'][number]['changes']): KeyPlan['work'][number] => ({ operation: changes, changes, changeG: grams(1), minutes: 2, partsMinor: 0 });

describe('readings expected after the least work', () => {
  it('are down and up weight of the worked keys, and the part that work changes, as derived', () => {
    const entries = expectedEntriesOf({ keys: [plan(40, { work: [done('friction'), done('front')] }), plan(41, { verdict: 'already' }), plan(42, { verdict: 'outOfReach' })] }, [], 'de-DE');
    expect(entries.map(({ index, quantity, typed, basis }) => [index, quantity, typed, basis])).toEqual([
      [40, 'downWeightG', '49,13', 'derived'], [40, 'upWeightG', '25', 'derived'], [40, 'frontWeightG', '24', 'derived'],
    ]);
  });

  it('leave out what cannot be', () => {
    const entries = expectedEntriesOf({ keys: [plan(40, { work: [done('hammer')], after: { ...touch, upWeightG: grams(-3) } })] }, [], 'en');
    expect(entries.map(({ quantity }) => quantity)).toEqual(['downWeightG', 'hammerWeightG']);
  });
});
