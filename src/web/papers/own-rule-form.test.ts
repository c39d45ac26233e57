import { type PaperRule, ruleSchema } from '#law';
import { mustBe } from '#result';
import { describe, expect, it } from 'vitest';
import { isPlainRule, ownRuleDraftOf, ownRuleFormOf } from './own-rule-form.ts';

const words = (text: string) => ({ en: text, de: text });
const plain = {
  id: 'own-1', jurisdictions: ['EU'], materials: ['ivory'], deeds: ['sell'], outcome: 'ask', papers: [words('Letter'), words('Photo')], text: words('House rule'), source: 'Invented', authority: words('Nobody'),
  effectiveFrom: '2026-01-01', seen: 'own', lastChecked: '2026-01-01', reviewBy: '2034-01-01',
} as const;
const rule = (more: object = {}): PaperRule => ruleSchema.parse({ ...plain, ...more });
const two = [{ fact: 'yearMade', below: 1947.5 }, { fact: 'ivoryRaw', is: false }];

describe('the form of a rule of the shop’s own', () => {
  it.each([
    ['always', {}], ['one fact', { when: { fact: 'ivoryRaw', is: true } }], ['a number', { when: { fact: 'ivoryMassG', atLeast: 199.5 } }], ['all of two', { when: { all: two } }], ['any of two', { when: { any: two } }],
  ])('gives back a rule that holds on %s as it stood, in either way of writing numbers', (_, more) => {
    const standing = rule(more);
    expect(isPlainRule(standing)).toBe(true);
    for (const locale of ['en-GB', 'de-DE']) expect(mustBe(ownRuleDraftOf(ownRuleFormOf(standing, locale), standing.id, locale))).toMatchObject({ kind: 'ownRule', rule: standing });
  });

  it('leaves alone what it cannot hold: nested conditions, words that differ by language, another outcome otherwise', () => {
    for (const more of [{ when: { all: [{ any: two }] } }, { when: { not: two[0] } }, { text: { en: 'a', de: 'b' } }, { otherwise: 'prohibited' }, { when: { fact: 'ivoryMassHow', is: 'weighed' } }]) expect(isPlainRule(rule(more))).toBe(false);
  });

  it('names the field of the condition that is wrong', () => {
    const form = { ...ownRuleFormOf(rule(), 'en-GB'), conditions: [{ fact: 'ivoryRaw', test: 'below', value: '3' }, { fact: '', test: 'yes', value: '' }, { fact: 'yearMade', test: 'atLeast', value: 'old' }] };
    const pathsOf = (conditions: typeof form.conditions): readonly string[] => { const draft = ownRuleDraftOf({ ...form, conditions }, 'own-1', 'en-GB'); return draft.ok ? [] : draft.issues.map(({ path }) => path); };
    expect(pathsOf(form.conditions)).toEqual(['conditions[1].fact', 'conditions[2].value']);
    expect(pathsOf(form.conditions.slice(0, 1))).toEqual(['conditions[0].fact']);
    expect(pathsOf([{ fact: 'yearMade', test: 'yes', value: '' }, { fact: 'ivoryRaw', test: 'no', value: '' }])).toEqual(['conditions[0].fact']);
  });
});
