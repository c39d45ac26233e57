import { mustBe } from '#result';
import { grams, gramsPerCubicMillimetre, ratio } from '#units';
import { describe, expect, it } from 'vitest';
import type { KeyLeadsProblem } from './key-leads-problem.ts';
import { leadRemediesOf } from './key-leads-remedy.ts';
import { keyLeads } from './key-leads.ts';
import { type PlainQuestion, gridOf, questionOf } from './testing/question.ts';

const grid = gridOf(60, 200, 5);
const feasible = (problem: KeyLeadsProblem): boolean => mustBe(keyLeads(problem)).feasible;
const remediesOf = (question: PlainQuestion) => {
  const problem = questionOf(question);
  const remedies = leadRemediesOf(problem, mustBe(keyLeads(problem)), { hammerWeightG: grams(9), weightRatio: ratio(5.5) });
  if (remedies === undefined) throw new Error('the target was met');
  return { problem, remedies };
};

describe('what would reach a target out of reach', () => {
  it.each([
    ['too few leads', { target: 44, most: 2, grid, drills: [9.5, 11.1] }],
    ['too small a drill', { target: 20, most: 2, grid, drills: [7.9] }],
    ['a little too far', { target: 60, most: 4, grid }],
  ] as const)('%s: each change named does it, and a smaller one of its kind does not', (_, question) => {
    const { problem, remedies: { maxLeads, diameterMm, densityGPerMm3, targetChangeG } } = remediesOf(question);
    expect(feasible(problem)).toBe(false);
    if (maxLeads !== undefined) {
      expect(feasible({ ...problem, maxLeads })).toBe(true);
      expect(maxLeads === problem.maxLeads + 1 || !feasible({ ...problem, maxLeads: maxLeads - 1 })).toBe(true);
    }
    if (diameterMm !== undefined) expect(feasible({ ...problem, diametersMm: [...problem.diametersMm, diameterMm] })).toBe(true);
    if (densityGPerMm3 !== undefined) {
      expect(feasible({ ...problem, leadDensityGPerMm3: gramsPerCubicMillimetre(densityGPerMm3 * (1 + 1e-9)) })).toBe(true);
      expect(feasible({ ...problem, leadDensityGPerMm3: gramsPerCubicMillimetre(densityGPerMm3 * 0.999) })).toBe(false);
    }
    expect(targetChangeG).toBeLessThan(0);
    expect(feasible({ ...problem, targetFrontWeightG: grams(problem.targetFrontWeightG + targetChangeG - 1e-9) })).toBe(true);
    expect(feasible({ ...problem, targetFrontWeightG: grams(problem.targetFrontWeightG + targetChangeG * 0.99) })).toBe(false);
    expect([maxLeads, diameterMm, densityGPerMm3].some((change) => change !== undefined)).toBe(true);
  });

  it('trades front weight against hammer and ratio by the balance of moments', () => {
    const { remedies: { targetChangeG, hammerChangeG, ratioChange } } = remediesOf({ target: 60, most: 3, grid });
    expect(hammerChangeG).toBeCloseTo(targetChangeG / 5.5, 12);
    expect(ratioChange).toBeCloseTo(targetChangeG / 9, 12);
  });

  it('offers no lead to a key whose front is already too heavy', () => {
    const { remedies } = remediesOf({ bare: 30, target: 20, most: 3, grid });
    expect(remedies).toEqual({ targetChangeG: 9.75, hammerChangeG: 9.75 / 5.5, ratioChange: 9.75 / 9 });
  });

  it('says nothing of a target that is met', () => {
    const problem = questionOf({ target: 20, most: 3 });
    expect(leadRemediesOf(problem, mustBe(keyLeads(problem)))).toBeUndefined();
  });
});
