import { mustBe } from '#result';
import { shopCardDraftSchema } from '#workshop';
import { describe, expect, it } from 'vitest';
import { standardDraftOf, standardFormOf } from './standard-form.ts';

const shares = { lower: [0.65, 0.8, 0.8, 0.8, 0.8, 0.65], upper: [1.45, 1.2, 1.2, 1.2, 1.2, 1.25] };
const formula = { name: 'House music, invented', time: { slopeS: 0.45, offsetS: -0.07 }, ...shares, volumes: { fromM3: 30, toM3: 1000.5 }, source: 'Invented\nsecond line' };
const fixed = { name: 'One time, invented', time: { fixedS: 0.85 }, ...shares, volumes: null, source: '' };

describe('the form of a target of the shop’s own', () => {
  it.each([formula, fixed].flatMap((target) => ['en-GB', 'de-DE'].map((locale) => [target.name, locale, target] as const)))('gives back %s as it stood, in %s', (_, locale, target) => {
    const card = shopCardDraftSchema.parse({ kind: 'standard', target });
    if (card.kind !== 'standard') throw new Error('another kind');
    expect(mustBe(standardDraftOf(standardFormOf(card.target, locale), locale))).toEqual(card);
  });

  it('asks for a formula or a time, never both, six shares, both ends of the volumes, and names the field', () => {
    const base = standardFormOf(undefined, 'en-GB').fields;
    const good = { ...base, name: 'x', fixedS: '0.8', lower: '0.8 0.8 0.8 0.8 0.8 0.8', upper: '1.2 1.2 1.2 1.2 1.2 1.2' };
    const wrong = (fields: Readonly<Record<string, string>>): readonly string[] => { const draft = standardDraftOf({ fields: { ...good, ...fields } }, 'en-GB'); return draft.ok ? [] : draft.issues.map(({ path }) => path); };
    expect(wrong({})).toEqual([]);
    expect(wrong({ fixedS: '' })).toEqual(['slopeS']);
    expect(wrong({ slopeS: '0.4' })).toEqual(['fixedS', 'offsetS']);
    expect(wrong({ lower: '0.8 0.8' })).toEqual(['lower']);
    expect(wrong({ lower: '0.8 0.8 0.8 0.8 0.8 1.1' })).toEqual(['lower']);
    expect(wrong({ fromM3: '30' })).toEqual(['toM3']);
    expect(wrong({ fromM3: '30', toM3: '20' })).toEqual(['toM3']);
    expect(wrong({ name: '' })).toEqual(['name']);
  });
});
