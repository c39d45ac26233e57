import { type PaperRule, ruleSchema } from '#law';
import { mustBe } from '#result';
import { describe, expect, it } from 'vitest';
import { type OwnRuleForm, isPlainRule, ownRuleDraftOf, ownRuleFormOf } from './own-rule-form.ts';

const words = (text: string) => ({ en: text, de: text });
const plain = {
  id: 'own-1', jurisdictions: ['EU'], materials: ['ivory'], deeds: ['sell'], outcome: 'ask', papers: [words('Letter'), words('Photo')], text: words('House rule'), source: 'Invented', authority: words('Nobody'),
  effectiveFrom: '2026-01-01', seen: 'own', lastChecked: '2026-01-01', reviewBy: '2034-01-01',
} as const;
const rule = (more: object = {}): PaperRule => ruleSchema.parse({ ...plain, ...more });
const words1 = { fact: 'ivoryMassHow', is: 'weighed' };
const words2 = { any: [words1, { fact: 'ivoryMassHow', is: 'measured' }] };
const two = [{ fact: 'yearMade', below: 1947.5 }, { fact: 'ivoryRaw', is: false }];

describe('the form of a rule of the shop’s own', () => {
  it.each([
    ['always', {}], ['one fact', { when: { fact: 'ivoryRaw', is: true } }], ['a number', { when: { fact: 'ivoryMassG', atLeast: 199.5 } }], ['all of two', { when: { all: two } }], ['any of two', { when: { any: two } }],
    ['one word of a fact', { when: words1 }], ['one of several words', { when: words2 }], ['none of several words', { when: { not: words2 } }], ['words among others', { when: { any: [words2, ...two] } }],
    ['parts of which any will do', { when: { all: [two[0], { any: [two[1], words2, { fact: 'ageYears', atLeast: 100 }] }] } }], ['parts that all have to hold', { when: { any: [{ all: two }, words1] } }], ['an outcome otherwise', { when: { all: two }, otherwise: 'prohibited' }],
  ])('gives back a rule that holds on %s as it stood, in either way of writing numbers', (_, more) => {
    const standing = rule(more);
    expect(isPlainRule(standing)).toBe(true);
    for (const locale of ['en-GB', 'de-DE']) expect(mustBe(ownRuleDraftOf(ownRuleFormOf(standing, locale), standing.id, locale))).toMatchObject({ kind: 'ownRule', rule: standing });
  });

  it('leaves alone what it cannot hold: conditions nested deeper, denials of what is no word, words that differ by language', () => {
    for (const more of [{ when: { all: [two[0], { any: [{ all: two }, words1] }] } }, { when: { not: two[0] } }, { when: { all: [{ all: two }, words1] } }, { text: { en: 'a', de: 'b' } }]) expect(isPlainRule(rule(more))).toBe(false);
  });

  it('names the field of the condition that is wrong', () => {
    const part = (fact: string, test: string, value = '') => ({ fact, test, value, words: [] });
    const pathsOf = (conditions: OwnRuleForm['conditions']): readonly string[] => { const draft = ownRuleDraftOf({ ...ownRuleFormOf(rule(), 'en-GB'), conditions }, 'own-1', 'en-GB'); return draft.ok ? [] : draft.issues.map(({ path }) => path); };
    expect(pathsOf([[part('ivoryRaw', 'below', '3')], [part('', 'yes')], [part('yearMade', 'atLeast', 'old')], [part('ivoryRaw', 'yes'), part('ivoryMassHow', 'oneOf')]])).toEqual(['conditions[1][0].fact', 'conditions[3][1].words', 'conditions[2][0].value']);
    expect(pathsOf([[part('ivoryRaw', 'below', '3')]])).toEqual(['conditions[0][0].fact']);
    expect(pathsOf([[part('yearMade', 'yes')], [part('ivoryRaw', 'no'), part('ivoryFixed', 'below', '2')]])).toEqual(['conditions[0][0].fact', 'conditions[1][1].fact']);
    expect(pathsOf([[part('ivoryRaw', 'no'), { ...part('ivoryMassHow', 'noneOf'), words: ['weighed', 'guessed'] }]])).toEqual(['conditions[0][1].fact']);
  });
});
