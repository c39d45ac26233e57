import { mustBe } from '#result';
import { describe, expect, it } from 'vitest';
import { keyLeads } from './key-leads.ts';
import { leadCountsOf, leadWaysOf } from './lead-ways.ts';
import { type PlainQuestion, gridOf, questionOf } from './testing/question.ts';

const bench = { bench: [10, 25, 20], trims: [3, 4, 5, 6] } as const;
const waysOf = (question: PlainQuestion) => {
  const problem = questionOf(question);
  const answer = mustBe(keyLeads(problem));
  return { problem, answer, counts: leadCountsOf(answer.leads, problem), ways: leadWaysOf(problem, answer) };
};

describe('what a bench worker counts', () => {
  const little: PlainQuestion = { bare: 3, target: 1.5, tolerance: 0.1, most: 5, drills: [9.5, 11.1, 12.7], grid: [...gridOf(-90, -45, 1), ...gridOf(45, 90, 1)] };

  it('loses a gram and a half by one small lead drilled out, where two leads against each other were found before', () => {
    const before = waysOf(little);
    expect(before.answer.leads.length).toBe(2);
    expect(Math.sign((before.answer.leads[0]?.positionMm ?? 0) * (before.answer.leads[1]?.positionMm ?? 0))).toBe(-1);
    const { answer, counts, ways } = waysOf({ ...little, ...bench });
    expect(counts).toMatchObject({ pieces: 1, drilled: 1, trimmed: 1, plugged: 0 });
    // −1.5·225 = −337.5 g·mm: a solid lead of 9.5 mm has 10.0 g and would stand 34 mm from the balance hole, within the 40 mm kept clear.
    expect(answer.leads[0]).toMatchObject({ diameterMm: 9.5, boreMm: 5 });
    expect(ways.every(({ costG, missG }) => missG > 0 || costG >= answer.costG)).toBe(true);
  });

  it('drills an old lead out rather than set it anew, and tells what leaving it would miss', () => {
    const { answer, counts, ways } = waysOf({ bare: 2, target: 15, old: [[174, 12.7]], ...bench });
    expect(counts).toMatchObject({ pieces: 1, drilled: 0, trimmed: 1, plugged: 0 });
    expect(answer.leads[0]).toMatchObject({ positionMm: 174, hole: 'existing' });
    const lies = ways.find(({ way }) => way === 'asItLies');
    // 17.93 g·174/225 + 2 = 15.87 g, 0.62 g beyond 15 ± 0.25.
    expect(lies?.frontWeightG).toBeCloseTo(15.87, 2);
    expect(lies?.missG).toBeCloseTo(0.62, 2);
    expect(lies).toMatchObject({ drilled: 0, trimmed: 0, plugged: 0 });
  });

  it('leaves a key alone that is right, though fewer leads would do with less inertia', () => {
    const { counts, ways } = waysOf({ bare: 2, target: 2 + (17.93 * (180 + 160 - 10)) / 225, old: [[180, 12.7], [160, 12.7], [-10, 12.7]], ...bench });
    expect(counts).toMatchObject({ pieces: 3, drilled: 0, trimmed: 0, plugged: 0 });
    expect(ways.find(({ way }) => way === 'fewestPieces')).toMatchObject({ pieces: 2 });
  });

  it('tells no way twice', () => {
    const { answer, ways } = waysOf({ bare: 2, target: 20, ...bench });
    const said = [answer, ...ways].map(({ leads }) => JSON.stringify(leads));
    expect(new Set(said).size).toBe(said.length);
  });
});
