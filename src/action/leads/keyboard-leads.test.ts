import { mustBe } from '#result';
import { describe, expect, it } from 'vitest';
import { leadMassOf } from './lead.ts';
import { keyLeads } from './key-leads.ts';
import { keyboardLeads } from './keyboard-leads.ts';
import { gridOf, questionOf } from './testing/question.ts';

const grid = gridOf(60, 200, 4);
const questions = [
  { key: 1, ...questionOf({ target: 31, grid, old: [[180, 12.7], [160, 12.7]] }) },
  { key: 2, ...questionOf({ a: 190, target: 14, grid: gridOf(60, 170, 4), old: [[150, 11.1], [80, 9.5]] }) },
  { key: 3, ...questionOf({ target: 70, most: 2, grid }) },
];

describe('leads of a keyboard', () => {
  it('solves each key as by itself and adds up what there is to do', () => {
    const { keys, sizes, missed, ...sums } = mustBe(keyboardLeads(questions));
    for (const [place, { key: _, ...question }] of questions.entries()) expect(keys[place]).toMatchObject(mustBe(keyLeads(question)));
    expect(missed).toEqual([3]);
    expect(sums).toEqual({
      leads: keys.reduce((sum, { leads }) => sum + leads.length, 0),
      newHoles: keys.flatMap(({ leads }) => leads).filter(({ hole }) => hole === 'new').length,
      plugs: keys.flatMap(({ plugs }) => plugs).length,
      feasible: 2, proven: 3,
    });
    expect(sizes.reduce((sum, { refilled, drilled }) => sum + refilled + drilled, 0)).toBe(sums.leads);
    expect(sizes.reduce((sum, { plugged }) => sum + plugged, 0)).toBe(sums.plugs);
  });

  it('says how much metal is to be at hand', () => {
    const { keys, sizes } = mustBe(keyboardLeads(questions));
    const [bed] = questions;
    if (bed === undefined) return;
    const gross = { ...bed, woodDensityGPerMm3: 0 as typeof bed.woodDensityGPerMm3 };
    expect(sizes.reduce((sum, { metalG }) => sum + metalG, 0)).toBeCloseTo(keys.flatMap(({ leads }) => leads).reduce((sum, lead) => sum + leadMassOf(lead, gross), 0), 9);
  });

  it('names the key of what is wrong', () => {
    const wrong = questions.map((question, place) => (place === 1 ? { ...question, woodDensityGPerMm3: question.leadDensityGPerMm3 } : question));
    expect(keyboardLeads(wrong)).toMatchObject({ ok: false, issues: [{ path: '[1].leadDensityGPerMm3' }] });
  });
});
