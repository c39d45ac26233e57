import { mustBe } from '#result';
import { grams, ratio } from '#units';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { balanceFromPartsOf, weightRatioOf } from '../parts.ts';
import { balanceWeightOf } from '../balance.ts';
import { leastWork } from './least-work.ts';
import type { LeastWork, LeastWorkProblem, WorkOperation } from './problem.ts';
import { fewestMinutes, insideWith } from './testing/exhaust.ts';
import { minutesByMilp } from './testing/milp.ts';
import { SHOP, amount, keyOf, questionOf } from './testing/question.ts';

const frictionNames = SHOP.filter(({ changes }) => changes === 'friction').map(({ name }) => name);

/** A key with faults: friction here and there, of which the operations are told their part. */
const faultyKey = fc.record({
  down: fc.integer({ min: 380, max: 640 }), friction: fc.integer({ min: 70, max: 210 }), front: fc.integer({ min: 100, max: 400 }), hammer: fc.integer({ min: 60, max: 110 }),
  parts: fc.uniqueArray(fc.tuple(fc.constantFrom(...frictionNames), fc.integer({ min: -60, max: 5 }), fc.constantFrom(undefined, 0.3)), { maxLength: 3, selector: ([name]) => name }),
}).map(({ down, friction, front, hammer, parts }) => ({
  down: down / 10, up: (down - 2 * friction) / 10, front: front / 10, hammer: hammer / 10,
  amounts: parts.map(([operation, tenths, uncertainty]) => ({ operation, ...amount.friction(tenths / 10, uncertainty) })),
}));

const keyboard = (most: number) => fc.array(faultyKey, { minLength: 1, maxLength: most }).map((keys) => keys.map((key, place) => keyOf({ ...key, key: place + 1 })));

/** A shop with some of the list, other minutes, steps, set-ups and limits. */
const shopQuestion = (mostKeys: number, mostOperations: number) => fc.record({
  keys: keyboard(mostKeys),
  picked: fc.uniqueArray(fc.tuple(fc.integer({ min: 0, max: SHOP.length - 1 }), fc.integer({ min: 0, max: 20 })), { minLength: 1, maxLength: mostOperations, selector: ([place]) => place }),
  steps: fc.boolean(),
  quantity: fc.constantFrom('downWeight' as const, 'balanceWeight' as const),
  tolerance: fc.constantFrom(0.5, 1, 2, 3),
  limits: fc.constantFrom({}, { minUpWeightG: grams(21) }, { minUpWeightG: grams(18), frictionFromG: grams(8), frictionToG: grams(14) }),
  guard: fc.constantFrom(0, 0.3),
  setup: fc.tuple(fc.integer({ min: 0, max: 40 }), fc.integer({ min: 0, max: 40 })),
}).map(({ keys, picked, steps, quantity, tolerance, limits, guard, setup }): LeastWorkProblem => {
  const operations = picked.flatMap(([place, minutes]): readonly WorkOperation[] => {
    const operation = SHOP[place];
    return operation === undefined ? [] : [{ ...operation, minutes, ...(steps && operation.changes === 'front' ? { amount: amount.weight(-9, 12, 1.5) } : {}) }];
  });
  const named = new Set(operations.map(({ name }) => name));
  return questionOf(keys.map((key) => ({ ...key, amounts: (key.amounts ?? []).filter(({ operation }) => named.has(operation)) })), {
    operations, setups: [{ name: 'keysOff', minutes: setup[0] }, { name: 'stackOff', minutes: setup[1] }],
    target: { quantity, targetG: grams(quantity === 'downWeight' ? 49 : 37), toleranceG: grams(tolerance), guardG: grams(guard), ...limits },
  });
});

/** Sum of the doubts of the work done at a key. */
const doubtOf = (work: LeastWork['keys'][number]['work'], amounts: LeastWorkProblem['keys'][number]['amounts'] = []): number =>
  work.reduce((sum, { operation }) => sum + amounts.reduce((own, each) => own + (each.operation === operation && 'changeG' in each ? (each.uncertaintyG ?? 0) : 0), 0), 0);

const changesOf = (work: LeastWork['keys'][number]['work']) => {
  const sum = { friction: 0, ratio: 0, hammer: 0, front: 0 };
  for (const { changes, changeG = 0, ratioChange = 0 } of work) sum[changes] += changeG + ratioChange;
  return sum;
};

describe('least work against exhaustion', () => {
  it('takes no more minutes than any set of work that a fine row of amounts shows to be enough, and no fewer than any that could be', () => {
    fc.assert(fc.property(shopQuestion(3, 4), (problem) => {
      const found = mustBe(leastWork(problem));
      const surely = fewestMinutes(problem, -1e-7);
      const perhaps = fewestMinutes(problem, 0.9);
      if (surely.unreachable === found.outOfReach.length) expect(found.minutes).toBeLessThanOrEqual(surely.minutes + 1e-9);
      if (perhaps.unreachable === found.outOfReach.length) expect(found.minutes).toBeGreaterThanOrEqual(perhaps.minutes - 1e-9);
      expect(found.outOfReach.length).toBeLessThanOrEqual(surely.unreachable);
      expect(found.outOfReach.length).toBeGreaterThanOrEqual(perhaps.unreachable);
    }), { numRuns: 150, seed: 11 });
  });

  it('meets exhaustion to the minute where every amount goes in steps', () => {
    const inSteps = SHOP.map((operation): WorkOperation => (operation.amount !== undefined && 'fromG' in operation.amount ? { ...operation, amount: { ...operation.amount, stepG: grams(0.75) } } : operation)).filter(({ changes }) => changes === 'friction' || changes === 'front');
    fc.assert(fc.property(keyboard(4), fc.integer({ min: 0, max: 60 }), (keys, minutes) => {
      const problem = questionOf(keys, { operations: inSteps, setups: [{ name: 'keysOff', minutes }, { name: 'stackOff', minutes: 25 }] });
      const found = mustBe(leastWork(problem));
      const every = fewestMinutes(problem, 1e-9);
      expect(found.outOfReach.length).toBe(every.unreachable);
      expect(found.minutes).toBeCloseTo(every.minutes, 9);
    }), { numRuns: 60, seed: 12 });
  });
});

describe('least work against a general solver', () => {
  const oneOfHammerAndRatio = SHOP.map((operation): WorkOperation => (operation.changes === 'hammer' || operation.changes === 'ratio' ? { ...operation, group: 'weight' } : operation));
  const named = (problem: LeastWorkProblem): LeastWorkProblem => ({ ...problem, operations: problem.operations.map((operation) => oneOfHammerAndRatio.find(({ name }) => name === operation.name) ?? operation) });
  const cases = fc.sample(fc.tuple(fc.array(faultyKey, { minLength: 12, maxLength: 24 }).map((keys) => keys.map((key, place) => keyOf({ ...key, key: place + 1 }))), shopQuestion(1, 10), fc.integer({ min: 5, max: 60 })), { numRuns: 4, seed: 19 });
  it.each(cases.map((each, place) => [place, ...each] as const))('keyboard %i', async (_, keys, { target, setups = [] }, minutes) => {
    const problem = named(questionOf(keys, { target, setups: [{ name: 'keysOff', minutes }, ...setups.slice(1)] }));
    const found = mustBe(leastWork(problem));
    const reachable = keys.filter(({ key }) => !found.outOfReach.includes(key));
    expect(found.minutes).toBeCloseTo(await minutesByMilp({ ...problem, keys: reachable }) ?? NaN, 6);
    for (const key of keys.filter((one) => !reachable.includes(one))) expect(await minutesByMilp({ ...problem, keys: [key] })).toBeUndefined();
  });
});

describe('every key of a plan', () => {
  it('is inside when worked out anew from its parts and the changes', () => {
    fc.assert(fc.property(shopQuestion(8, 10), (problem) => {
      const { keys } = mustBe(leastWork(problem));
      for (const [place, plan] of keys.entries()) {
        const key = problem.keys[place];
        if (key?.parts === undefined) continue;
        const change = changesOf(plan.work);
        expect(insideWith(problem, key, change, doubtOf(plan.work, key.amounts), 1e-6)).toBe(plan.verdict !== 'outOfReach');
        const before = weightRatioOf({ ...key.parts, balanceWeightG: balanceWeightOf(key) });
        const after = balanceFromPartsOf({ ...key.parts, hammerWeightG: grams(key.parts.hammerWeightG + change.hammer), frontWeightG: grams(key.parts.frontWeightG + change.front), actionRatio: ratio(before + change.ratio) });
        expect(plan.after.balanceWeightG).toBeCloseTo(after, 6);
        expect(plan.after.downWeightG - plan.after.upWeightG).toBeCloseTo(key.downWeightG - key.upWeightG + 2 * change.friction, 6);
      }
    }), { numRuns: 150, seed: 13 });
  });

  it('keeps every amount between its ends and on its steps', () => {
    fc.assert(fc.property(shopQuestion(4, 10), (problem) => {
      for (const plan of mustBe(leastWork(problem)).keys) {
        for (const { operation, changeG, ratioChange } of [...plan.work, ...(plan.outOfReach?.nearest ?? [])]) {
          const own = problem.keys.find(({ key }) => key === plan.key)?.amounts?.find((one) => one.operation === operation) ?? problem.operations.find(({ name }) => name === operation)?.amount;
          if (own === undefined) throw new Error('work that was not offered');
          if ('changeG' in own) expect(changeG).toBe(own.changeG);
          else {
            const [from, to, by] = 'fromG' in own ? [own.fromG, own.toG, changeG ?? NaN] : [own.fromRatio, own.toRatio, ratioChange ?? NaN];
            expect(by).toBeGreaterThanOrEqual(from - 1e-9);
            expect(by).toBeLessThanOrEqual(to + 1e-9);
            if ('fromG' in own && own.stepG !== undefined) expect(((by - from) / own.stepG + 1e-9) % 1).toBeCloseTo(0, 6);
          }
        }
      }
    }), { numRuns: 100, seed: 14 });
  });

  it('out of reach comes inside by each single change that is named, and by no smaller one', () => {
    fc.assert(fc.property(shopQuestion(4, 4), (problem) => {
      for (const plan of mustBe(leastWork(problem)).keys) {
        const key = problem.keys.find((one) => one.key === plan.key);
        if (plan.outOfReach === undefined || key === undefined) continue;
        expect(plan.outOfReach.missG).toBeGreaterThan(0);
        for (const { changes, changeG = 0, ratioChange = 0, alone } of plan.outOfReach.wouldReach) {
          const base = changesOf(alone ? [] : plan.outOfReach.nearest);
          const by = changeG + ratioChange;
          const doubt = doubtOf(alone ? [] : plan.outOfReach.nearest, key.amounts);
          expect(insideWith(problem, key, { ...base, [changes]: base[changes] + by }, doubt, 1e-6)).toBe(true);
          expect(insideWith(problem, key, { ...base, [changes]: base[changes] + by * 0.99 }, doubt, 0)).toBe(false);
        }
      }
    }), { numRuns: 150, seed: 15 });
  });
});

describe('minutes of a plan', () => {
  it('never rise by a further operation, and never fall by a dearer one', () => {
    fc.assert(fc.property(shopQuestion(5, 8), fc.integer({ min: 0, max: 7 }), (problem, which) => {
      const base = mustBe(leastWork(problem));
      const place = which % problem.operations.length;
      const name = problem.operations[place]?.name ?? '';
      const less = mustBe(leastWork({ ...problem, operations: problem.operations.toSpliced(place, 1), keys: problem.keys.map((key) => ({ ...key, amounts: (key.amounts ?? []).filter(({ operation }) => operation !== name) })) }));
      expect(base.outOfReach.length).toBeLessThanOrEqual(less.outOfReach.length);
      if (base.outOfReach.length === less.outOfReach.length) expect(base.minutes).toBeLessThanOrEqual(less.minutes + 1e-9);
      const dearer = mustBe(leastWork({ ...problem, operations: problem.operations.map((operation, at) => (at === place ? { ...operation, minutes: operation.minutes + 3 } : operation)) }));
      expect(dearer.minutes).toBeGreaterThanOrEqual(base.minutes - 1e-9);
      const dearSetups = mustBe(leastWork({ ...problem, setups: (problem.setups ?? []).map((setup) => ({ ...setup, minutes: setup.minutes + 10 })) }));
      expect(dearSetups.minutes).toBeGreaterThanOrEqual(base.minutes - 1e-9);
    }), { numRuns: 150, seed: 16 });
  });

  it('are the sum of keys and set-ups, and of stages and set-ups', () => {
    fc.assert(fc.property(shopQuestion(6, 10), (problem) => {
      const { minutes, keys, stages, setups } = mustBe(leastWork(problem));
      const once = setups.reduce((sum, setup) => sum + setup.minutes, 0);
      expect(keys.reduce((sum, key) => sum + key.minutes, once)).toBeCloseTo(minutes, 9);
      expect(stages.reduce((sum, stage) => sum + stage.minutes, once)).toBeCloseTo(minutes, 9);
      for (const setup of setups) if (setup.minutes > 0) expect(setup.keys.length).toBeGreaterThan(0);
    }), { numRuns: 100, seed: 17 });
  });

  it('are never more than those of a naive plan that brings every key inside', () => {
    fc.assert(fc.property(shopQuestion(6, 10), (problem) => {
      const { minutes, outOfReach, replaceAll, leadOnly } = mustBe(leastWork(problem));
      if (outOfReach.length > 0) return;
      for (const naive of [replaceAll, leadOnly]) if (naive.outside.length === 0) expect(minutes).toBeLessThanOrEqual(naive.minutes + 1e-9);
    }), { numRuns: 100, seed: 18 });
  });
});
