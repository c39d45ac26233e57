import { type Ratio, grams, ratio } from '#units';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { balanceWeightOf, frictionOf, shareUncertaintiesOf, splitDeviation, touchReadingsOf } from './index.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const parts = fc.record({ weightRatio: between(4, 7), hammerWeightG: between(4, 14), wippenWeightG: between(8, 30), frontWeightG: between(-10, 50), frictionG: between(0, 25) });
type Parts = { readonly [K in 'weightRatio' | 'hammerWeightG' | 'wippenWeightG' | 'frontWeightG' | 'frictionG']: number };

const KEY_RATIO = ratio(0.51);
const SPRING = grams(4);
const downWeight = (p: Parts): number => p.weightRatio * p.hammerWeightG + KEY_RATIO * p.wippenWeightG - p.frontWeightG - SPRING + p.frictionG;

/** The key whose readings those parts give. */
function keyOf(p: Parts) {
  const balanceWeightG = grams(downWeight(p) - p.frictionG);
  return {
    ...touchReadingsOf({ balanceWeightG, frictionG: grams(p.frictionG) }),
    hammerWeightG: grams(p.hammerWeightG), wippenWeightG: grams(p.wippenWeightG), frontWeightG: grams(p.frontWeightG), helperSpringG: SPRING, keyRatio: KEY_RATIO,
  };
}
const targetOf = (p: Parts) => ({ weightRatio: p.weightRatio as Ratio, hammerWeightG: grams(p.hammerWeightG), wippenWeightG: grams(p.wippenWeightG), frontWeightG: grams(p.frontWeightG), frictionG: grams(p.frictionG) });

const NAMES = ['weightRatio', 'hammerWeightG', 'wippenWeightG', 'frontWeightG', 'frictionG'] as const;

function permutationsOf<T>(items: readonly T[]): readonly (readonly T[])[] {
  if (items.length === 0) return [[]];
  return items.flatMap((item, index) => permutationsOf(items.filter((_, other) => other !== index)).map((rest) => [item, ...rest]));
}

/** Each part's mean effect over all 120 orders in which the parts may be put right. */
function shapley(actual: Parts, target: Parts): Readonly<Record<(typeof NAMES)[number], number>> {
  const orders = permutationsOf(NAMES);
  const totals = { weightRatio: 0, hammerWeightG: 0, wippenWeightG: 0, frontWeightG: 0, frictionG: 0 };
  for (const order of orders) {
    let state: Parts = target;
    for (const name of order) {
      const next: Parts = { ...state, [name]: actual[name] };
      totals[name] += (downWeight(next) - downWeight(state)) / orders.length;
      state = next;
    }
  }
  return totals;
}

describe('the split of a departure', () => {
  it('is the mean over all 120 orders of repair', () => {
    fc.assert(fc.property(parts, parts, (actual, target) => {
      const { shares } = splitDeviation(keyOf(actual), targetOf(target));
      const expected = shapley(actual, target);
      expect(shares.ratioG).toBeCloseTo(expected.weightRatio, 9);
      expect(shares.hammerG).toBeCloseTo(expected.hammerWeightG, 9);
      expect(shares.wippenG).toBeCloseTo(expected.wippenWeightG, 9);
      expect(shares.frontG).toBeCloseTo(expected.frontWeightG, 9);
      expect(shares.frictionG).toBeCloseTo(expected.frictionG, 9);
    }), { numRuns: 40 });
  });

  it('adds up to the departure, to the last bit as printed and to rounding as read', () => {
    fc.assert(fc.property(parts, parts, (actual, target) => {
      const { shares, downWeightChangeG, weightRatio } = splitDeviation(keyOf(actual), targetOf(target));
      expect(Object.values(shares).reduce((sum: number, share: number) => sum + share)).toBe(downWeightChangeG);
      expect(downWeightChangeG).toBeCloseTo(keyOf(actual).downWeightG - downWeight(target), 9);
      expect(weightRatio).toBeCloseTo(actual.weightRatio, 9);
    }));
  });

  it('finds nothing where nothing departs', () => {
    fc.assert(fc.property(parts, (same) => {
      for (const share of Object.values(splitDeviation(keyOf(same), targetOf(same)).shares)) expect(share).toBeCloseTo(0, 9);
    }));
  });
});

describe('the uncertainty of each share', () => {
  it('is what small changes of every weighing make of it', () => {
    const doubt = { balanceWeightUncertaintyG: grams(0.5), scaleUncertaintyG: grams(0.2), keyRatioUncertainty: ratio(0.01) };
    fc.assert(fc.property(parts, parts, (actual, target) => {
      const key = keyOf(actual);
      const inputs = { balance: balanceWeightOf(key) as number, friction: frictionOf(key) as number, front: key.frontWeightG as number, hammer: key.hammerWeightG as number, wippen: key.wippenWeightG as number, ratio: key.keyRatio as number };
      const sharesAt = (x: typeof inputs) => splitDeviation({
        ...touchReadingsOf({ balanceWeightG: grams(x.balance), frictionG: grams(x.friction) }),
        frontWeightG: grams(x.front), hammerWeightG: grams(x.hammer), wippenWeightG: grams(x.wippen), keyRatio: ratio(x.ratio), helperSpringG: SPRING,
      }, targetOf(target)).shares;
      const doubts = { balance: 0.5, friction: 0.5, front: 0.2, hammer: 0.2, wippen: 0.2, ratio: 0.01 };
      const found = shareUncertaintiesOf(key, targetOf(target), doubt);
      for (const share of ['ratioG', 'hammerG', 'wippenG', 'frontG', 'frictionG'] as const) {
        const variance = (Object.keys(doubts) as (keyof typeof doubts)[]).reduce((sum, name) => {
          const h = 1e-4;
          const slope = (sharesAt({ ...inputs, [name]: inputs[name] + h })[share] - sharesAt({ ...inputs, [name]: inputs[name] - h })[share]) / (2 * h);
          return sum + (slope * doubts[name]) ** 2;
        }, 0);
        expect(found[share]).toBeCloseTo(Math.sqrt(variance), 5);
      }
    }), { numRuns: 50 });
  });
});
