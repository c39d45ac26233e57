import { mustBe } from '#result';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { keyLeads } from './key-leads.ts';
import type { KeyLeads, KeyLeadsProblem } from './key-leads-problem.ts';
import { type PlainLead, costOf, everySet, frontWeightOf } from './testing/exhaust.ts';
import { costByMilp } from './testing/milp.ts';
import { type PlainQuestion, gridOf, questionOf } from './testing/question.ts';

const solved = (question: PlainQuestion): KeyLeads => mustBe(keyLeads(questionOf(question)));
const plain = ({ leads }: Pick<KeyLeads, 'leads'>, { existingHoles }: Pick<KeyLeadsProblem, 'existingHoles'> = { existingHoles: [] }): readonly PlainLead[] => leads.map(({ positionMm: x, diameterMm: d, hole, boreMm: b = 0, densityGPerMm3: rho }) => ({
  x, d, old: hole === 'existing', b, foundB: existingHoles.find((found) => hole === 'existing' && found.positionMm === x)?.boreMm ?? 0, ...(rho === undefined ? {} : { rho, exchanged: hole === 'existing' }),
}));

/** Small questions: few places, few drills, holes anywhere, in front of the balance point and behind it. */
const smallQuestion = fc.record({
  gap: fc.constantFrom(0, 2, 3.5),
  bare: fc.integer({ min: -80, max: 120 }).map((tenths) => tenths / 10),
  target: fc.integer({ min: -100, max: 400 }).map((tenths) => tenths / 10),
  tolerance: fc.constantFrom(0, 0.1, 0.25, 1, 3),
  most: fc.integer({ min: 0, max: 4 }),
  grid: fc.uniqueArray(fc.integer({ min: -12, max: 20 }).map((x) => x * 10 + 5), { maxLength: 7 }),
  drills: fc.uniqueArray(fc.constantFrom(6.35, 9.5, 12.7), { maxLength: 2 }),
  old: fc.uniqueArray(fc.tuple(fc.integer({ min: -5, max: 9 }).map((x) => x * 20.5), fc.constantFrom(9.5, 11.1, 12.7)), { maxLength: 4, selector: ([x]) => x }),
  newHole: fc.constantFrom(0, 0.5, 50),
  keepOuts: fc.constantFrom([], [[-35, 35]] as const, [[60, 60], [100, 130.25]] as const),
});

/** The same with work that counts, leads that may be drilled out or were, and an insert of another metal. */
const benchQuestion = fc.tuple(smallQuestion, fc.record({
  bench: fc.constantFrom([0, 0, 0] as const, [10, 25, 20] as const, [1, 60, 0.5] as const),
  trims: fc.constantFrom([], [3, 6], [4, 8, 9.7]),
  inserts: fc.constantFrom([], [[9.5, 0.0085, 4]] as const, [[12.7, 0.0105, 0]] as const),
  bored: fc.constantFrom(undefined, 4),
}), fc.integer({ min: 0, max: 3 })).map(([question, { bored, ...bench }, most]): PlainQuestion => ({
  ...question, ...bench, most, grid: question.grid.slice(0, 5), old: question.old.slice(0, 3).map(([x, d]) => (bored === undefined ? [x, d] as const : [x, d, bored] as const)),
}));

/** What exhaustion says of a question. */
function exhausted(problem: KeyLeadsProblem) {
  const sets = everySet(problem).map((set) => ({ cost: costOf(problem, set), front: frontWeightOf(problem, set) }));
  const off = ({ front }: { readonly front: number }): number => Math.abs(front - problem.targetFrontWeightG);
  return {
    cheapest: Math.min(...sets.filter((set) => off(set) <= problem.toleranceG + 1e-9).map(({ cost }) => cost)),
    surely: Math.min(...sets.filter((set) => off(set) <= problem.toleranceG - 1e-9).map(({ cost }) => cost)),
    reach: [Math.min(...sets.map(({ front }) => front)), Math.max(...sets.map(({ front }) => front))] as const,
    nearest: Math.min(...sets.map(off)),
  };
}

describe('leads of one key against exhaustion', () => {
  it('meets the cheapest of every legal set, or says what is within reach and by how much it misses', () => {
    fc.assert(fc.property(fc.oneof(smallQuestion, benchQuestion), (question) => {
      const problem = questionOf(question);
      const answer = mustBe(keyLeads(problem));
      const every = exhausted(problem);
      expect(answer.proven).toBe(true);
      expect(frontWeightOf(problem, plain(answer, problem))).toBeCloseTo(answer.frontWeightG, 9);
      expect(costOf(problem, plain(answer, problem))).toBeCloseTo(answer.costG, 9);
      if (answer.feasible) {
        expect(answer.costG).toBeGreaterThanOrEqual(every.cheapest - 1e-8);
        expect(answer.costG).toBeLessThanOrEqual(every.surely + 1e-8);
        return;
      }
      expect(every.surely).toBe(Infinity);
      expect(answer.reachableG?.[0]).toBeCloseTo(every.reach[0], 9);
      expect(answer.reachableG?.[1]).toBeCloseTo(every.reach[1], 9);
      expect(Math.abs(answer.frontWeightG - problem.targetFrontWeightG)).toBeCloseTo(every.nearest, 9);
      expect(answer.missG).toBeCloseTo(every.nearest - problem.toleranceG, 9);
    }), { numRuns: 400, seed: 4 });
  });

  it('every lead of every answer, moved or not, is legal', () => {
    fc.assert(fc.property(smallQuestion, (question) => {
      const problem = questionOf(question);
      const answer = mustBe(keyLeads(problem));
      for (const set of [answer, ...(answer.finish === undefined ? [] : [answer.finish])]) {
        const leads = plain(set);
        expect(leads.length).toBeLessThanOrEqual(question.most);
        for (const [i, a] of leads.entries()) {
          for (const b of leads.slice(i + 1)) expect(Math.abs(a.x - b.x)).toBeGreaterThanOrEqual((a.d + b.d) / 2 + question.gap - 1e-3);
          if (a.old) continue;
          for (const [x, d] of question.old) expect(Math.abs(a.x - x)).toBeGreaterThanOrEqual((a.d + d) / 2 + question.gap - 1e-3);
          for (const [from, to] of question.keepOuts) expect(a.x + a.d / 2 <= from + 1e-3 || a.x - a.d / 2 >= to - 1e-3).toBe(true);
        }
      }
      if (answer.finish !== undefined) expect(answer.finish.frontWeightG).toBeCloseTo(question.target, 6);
    }), { numRuns: 300, seed: 5 });
  });

  it('plugs every old hole it does not refill, and no other', () => {
    fc.assert(fc.property(smallQuestion, (question) => {
      const { leads, plugs } = solved(question);
      const refilled = leads.filter(({ hole }) => hole === 'existing').length;
      expect(plugs.length + refilled).toBe(question.old.length);
    }), { numRuns: 100, seed: 6 });
  });

  it('is never dearer with more leads allowed, a wider tolerance, more places or cheaper holes', () => {
    fc.assert(fc.property(smallQuestion, (question) => {
      const base = solved(question);
      if (!base.feasible) return;
      for (const freer of [{ most: question.most + 1 }, { tolerance: question.tolerance + 0.5 }, { grid: [...question.grid, 172.5] }, { newHole: question.newHole / 2 }, { gap: question.gap / 2 }, { keepOuts: [] }]) {
        const answer = solved({ ...question, ...freer });
        expect(answer.feasible).toBe(true);
        expect(answer.costG).toBeLessThanOrEqual(base.costG + 1e-8);
      }
    }), { numRuns: 60, seed: 7 });
  });
});

describe('leads of one key against a general solver', () => {
  const grid = gridOf(42, 204, 3);
  const cases: readonly (readonly [string, PlainQuestion])[] = [
    ['old holes first', { bare: -4, target: 24.7, most: 5, grid, old: [[180.4, 12.7], [120.2, 11.1]] }],
    ['inertia alone', { bare: -4, target: 24.7, most: 4, grid, newHole: 0, drills: [9.5, 12.7] }],
    ['heavy bass key', { target: 43.6, most: 4, grid, newHole: 0, drills: [12.7] }],
    ['narrow tolerance', { target: 37.6, tolerance: 0.05, most: 4, grid, newHole: 5, old: [[150.3, 9.5]] }],
    ['keep-outs and a lead behind the balance point', { bare: 14, target: 6, most: 3, grid: [...gridOf(-150, -45, 3), ...grid], keepOuts: [[-120, -60], [60, 90]], newHole: 1 }],
    ['work at the bench counts', { bare: 2, target: 24.4, most: 4, grid, old: [[180.4, 12.7], [120.2, 11.1], [98.3, 12.7, 4]], bench: [10, 25, 20], trims: [3, 4, 5, 6] }],
    ['a little to lose behind the balance point', { bare: 3, target: 1.5, tolerance: 0.1, most: 5, grid: [...gridOf(-180, -45, 1), ...gridOf(45, 190, 1)], bench: [10, 25, 20], trims: [3, 4, 5, 6] }],
    ['inserts of another metal', { bare: -3, target: 31.1, most: 3, grid, inserts: [[12.7, 0.0173, 30], [9.5, 0.0085, 2]], newHole: 20 }],
    ['one other metal alone, old leads exchanged', { bare: 1, target: 14.2, most: 4, grid, drills: [], old: [[180.4, 12.7], [120.2, 11.1]], inserts: [[12.7, 0.0098, 0], [11.1, 0.0098, 0]], bench: [10, 25, 20] }],
    ['out of reach', { target: 60, most: 3, grid }],
  ];
  it.each(cases)('%s', async (_, question) => {
    const problem = questionOf(question);
    const answer = mustBe(keyLeads(problem));
    const cost = await costByMilp(problem);
    expect(answer.proven).toBe(true);
    expect(answer.feasible).toBe(cost !== undefined);
    if (cost !== undefined) expect(answer.costG).toBeCloseTo(cost, 6);
  });
});

describe('leads of one key', () => {
  it('k leads of one size weigh less on the key than fewer do, as the inertia of a fixed moment falls with their number', () => {
    const costs = [3, 4, 5].map((most) => solved({ target: 43.6, tolerance: 0.1, most, newHole: 0, drills: [12.7], grid: gridOf(30, 210, 0.5) }).costG);
    expect(costs[1]).toBeLessThan(costs[0] ?? 0);
    expect(costs[2]).toBeLessThan(costs[1] ?? 0);
    for (const [i, cost] of costs.entries()) expect(cost).toBeGreaterThan((43.5 * 225) ** 2 / ((i + 3) * 17.94 * 225 ** 2));
  });

  it('comes to the effective mass that an arrangement worked out by hand has for 43.6 g, and never above it', () => {
    for (const [most, byHand] of [[3, 35.6], [4, 27.1], [5, 22.4]] as const) {
      const { costG, proven } = solved({ target: 43.6, tolerance: 0.01, most, newHole: 0, drills: [12.7], grid: gridOf(20, 220, 0.1) });
      expect(proven).toBe(true);
      expect(costG).toBeLessThanOrEqual(byHand);
      expect(costG).toBeGreaterThan(byHand - 0.4);
    }
  });

  it('puts lead where it already was when drilling costs, and toward the balance point when it does not', () => {
    const question = { target: 29, most: 4, old: [[190, 12.7], [172, 12.7]] as const, drills: [12.7] };
    expect(solved({ ...question, newHole: 50 }).leads.map(({ positionMm, hole }) => [positionMm, hole])).toEqual([[190, 'existing'], [172, 'existing']]);
    const free = solved({ ...question, newHole: 0 });
    expect(free.leads.some(({ hole }) => hole === 'new')).toBe(true);
    expect(Math.max(...free.leads.map(({ positionMm }) => positionMm))).toBeLessThan(170);
  });

  it('moves one new lead so that the target is met and not the light edge of the tolerance', () => {
    const { frontWeightG, costG, finish } = solved({ target: 37.6, most: 3 });
    expect(frontWeightG).toBeLessThan(37.5);
    expect(finish?.frontWeightG).toBeCloseTo(37.6, 9);
    expect(finish?.costG).toBeGreaterThan(costG);
  });

  it('says so when the search is stopped before it is done', () => {
    const question = questionOf({ target: 43.6, most: 5, newHole: 0 });
    const stopped = mustBe(keyLeads({ ...question, nodeLimit: 1 }));
    expect(stopped.proven).toBe(false);
    expect(mustBe(keyLeads(question)).costG).toBeLessThanOrEqual(stopped.feasible ? stopped.costG : Infinity);
  });

  it('needs no lead where the bare key is already right', () => {
    expect(solved({ bare: 10, target: 10.1, old: [[100, 12.7]] })).toMatchObject({ feasible: true, leads: [], costG: 0, frontWeightG: 10, plugs: [{ positionMm: 100 }] });
  });

  it('refuses inserts lighter than wood, holes that meet and a keep-out turned round', () => {
    const question = questionOf({ target: 10, old: [[100, 12.7], [110, 12.7]], keepOuts: [[40, 20]] });
    const result = keyLeads({ ...question, woodDensityGPerMm3: question.leadDensityGPerMm3 });
    expect(result).toMatchObject({ ok: false, issues: [{ path: 'leadDensityGPerMm3' }, { path: 'existingHoles[1].positionMm', given: 110 }, { path: 'keepOutsMm[0][1]', given: 20 }] });
  });
});
