import { millimetres } from '#units';
import { describe, expect, it } from 'vitest';
import { factsSchema, mayBeBarred, papersNeededOf, papersTogether, placeSchema, ruleFileIssues, ruleFileSchema, rulesOn, shippedRules, thicknessOf } from './index.ts';
import type { PaperRule, PaperRuleFile } from './rule.ts';

const words = (text: string) => ({ en: text, de: text });
const rule: PaperRule = {
  id: 'invented', jurisdictions: ['EU'], materials: ['bone'], deeds: ['sell'], outcome: 'papers', papers: [words('Invented paper')], text: words('Invented for a test.'), source: 'Invented', authority: words('Nobody'),
  effectiveFrom: '2026-01-01', seen: 'own', lastChecked: '2026-01-01', reviewBy: '2027-01-01',
};
const file = (issued: string, rules: readonly PaperRule[] = [rule]): PaperRuleFile => ({ schema: 'wrestplank-papers/1', issued, rules: [...rules] });
const sale = (date: string) => ({ facts: factsSchema.parse({ material: 'bone' }), from: 'DE', to: 'DE', action: 'sell', date } as const);

describe('rules of a day', () => {
  const files = [file('2026-01-01'), file('2026-09-01', [{ ...rule, outcome: 'prohibited' }])];
  it.each([['2025-05-01', '2026-01-01'], ['2026-08-31', '2026-01-01'], ['2026-09-01', '2026-09-01'], ['2030-01-01', '2026-09-01']])('on %s are those issued %s', (date, issued) => {
    expect(rulesOn(date, files, []).issued).toBe(issued);
  });

  it('leave what was shipped before a change under the rules it was shipped by', () => {
    expect(papersNeededOf(sale('2026-08-31'), rulesOn('2026-08-31', files, []).rules).outcome).toBe('papers');
    expect(papersNeededOf(sale('2026-09-01'), rulesOn('2026-09-01', files, []).rules).outcome).toBe('prohibited');
  });

  it('hold from their first to their last day, both counted', () => {
    const ended = [{ ...rule, effectiveUntil: '2026-06-30' }];
    const outcomes = ['2025-12-31', '2026-01-01', '2026-06-30', '2026-07-01'].map((date) => papersNeededOf(sale(date), ended).outcome);
    expect(outcomes).toEqual(['ask', 'papers', 'papers', 'ask']);
  });

  it('count for the shop’s own beside every file', () => {
    expect(rulesOn('2026-02-01', files, [{ ...rule, id: 'own' }]).rules.map(({ id }) => id)).toEqual(['invented', 'own']);
  });
});

describe('a file of rules', () => {
  it('that comes with the program is whole', () => {
    expect(ruleFileIssues(shippedRules, 'file')).toEqual([]);
  });

  it('is refused by cell for a name given twice, days in the wrong order and facts held against what they cannot be', () => {
    const broken: PaperRule = { ...rule, effectiveUntil: '2025-12-31', reviewBy: '2025-01-01', when: { all: [{ fact: 'yearMade', is: true }, { not: { fact: 'ivoryFixed', below: 3 } }, { any: [{ fact: 'ivoryMassHow', is: 'guessed' }, { fact: 'ivoryRaw', is: 'no' }] }] } };
    expect(ruleFileIssues(file('2026-01-01', [rule, broken]), 'file').map(({ code, path, given }) => [code, path, given])).toEqual([
      ['conflict', 'file.rules[1].id', 'invented'],
      ['order', 'file.rules[1].effectiveUntil', '2025-12-31'],
      ['order', 'file.rules[1].reviewBy', '2025-01-01'],
      ['choice', 'file.rules[1].when.all[0].fact', 'yearMade'],
      ['choice', 'file.rules[1].when.all[1].not.fact', 'ivoryFixed'],
      ['choice', 'file.rules[1].when.all[2].any[0].is', 'guessed'],
      ['choice', 'file.rules[1].when.all[2].any[1].is', 'no'],
    ]);
  });

  it('is refused where a condition has no shape of one, or a fact nobody knows', () => {
    for (const when of [{ fact: 'yearMade' }, { fact: 'colour', is: 'black' }, { every: [] }, { all: [] }]) expect(ruleFileSchema.safeParse(file('2026-01-01', [{ ...rule, when: when as unknown as NonNullable<PaperRule['when']> }])).success).toBe(false);
  });
});

describe('what is not known', () => {
  it('is said to be barred perhaps, where the rule it hangs on bars', () => {
    const judged = papersTogether([{ facts: factsSchema.parse({ material: 'ivory:elephant', yearMade: 1926, playedUntilRecently: true }), from: 'DE', to: 'US', action: 'ship-sold', date: '2026-12-01' }], shippedRules.rules);
    expect(judged.outcome).toBe('papers');
    expect(mayBeBarred(judged)).toBe(true);
    const bone = papersTogether([{ facts: factsSchema.parse({ material: 'bone' }), from: 'DE', to: 'US', action: 'ship-sold', date: '2026-12-01' }], shippedRules.rules);
    expect(mayBeBarred(bone)).toBe(false);
  });

  it('makes every rule ask where a species without a wider kind is doubtful', () => {
    const ask = (facts: object) => papersNeededOf({ facts: factsSchema.parse({ material: 'tortoiseshell', ...facts }), from: 'DE', to: 'JP', action: 'ship-sold', date: '2026-12-01' }, shippedRules.rules).outcome;
    expect([ask({}), ask({ speciesProven: false })]).toEqual(['papers', 'ask']);
  });

  it.each(['XX', 'UK', 'de', 'Germany', ''])('takes %s for no place', (place) => {
    expect(placeSchema.safeParse(place).success).toBe(false);
  });
});

describe('thickness', () => {
  // JCGM 101:2008, 6.4.9: the scaled t-distribution of n readings has variance (n − 1)/(n − 3) · s²/n. By hand: s² = 0.0070/9, u² = 9/7 · s²/10 = 0.0001, with a gauge of 0.01 √(0.0002).
  it('of ten readings has the uncertainty of the scaled t-distribution and the gauge (JCGM-101)', () => {
    const { meanMm, uncertaintyMm } = thicknessOf([0.86, 0.91, 0.88, 0.93, 0.84, 0.9, 0.87, 0.92, 0.89, 0.9].map(millimetres), millimetres(0.01));
    expect(meanMm).toBeCloseTo(0.89, 12);
    expect(uncertaintyMm).toBeCloseTo(Math.sqrt(0.0002), 12);
  });

  it('is not told from three', () => {
    expect(() => thicknessOf([0.8, 0.9, 1].map(millimetres), millimetres(0))).toThrow(RangeError);
  });
});
