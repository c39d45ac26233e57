import { gramsPerCubicCentimetre, millimetres, squareMillimetres } from '#units';
import { describe, expect, it } from 'vitest';
import type { z } from 'zod';
import { holds } from './condition.ts';
import { factsSchema } from './facts.ts';
import { ivoryMassOf } from './ivory-mass.ts';
import { belongsTo, listedMaterials } from './materials.ts';
import { type PaperQuestion, papersNeededOf } from './papers-needed.ts';
import { ruleFileSchema } from './rule.ts';
import { shippedRules } from './rules.ts';

type Given = z.input<typeof factsSchema>;
const ask = (facts: Given, rest: Partial<PaperQuestion> = {}) => papersNeededOf({ facts: factsSchema.parse(facts), from: 'GB', to: 'GB', action: 'sell', date: '2026-12-01', ...rest }, shippedRules.rules);
const elephant: Given = { material: 'ivory:african-elephant', yearMade: 1905, ivoryVolPct: 0.1, ivoryRaw: false };

describe('papers', () => {
  it('has rules that fit their own schema, each of one name', () => {
    expect(ruleFileSchema.safeParse(shippedRules).error).toBeUndefined();
    expect(new Set(shippedRules.rules.map(({ id }) => id)).size).toBe(shippedRules.rules.length);
  });

  // Ivory Act 2018, sections 8 and 10, as read.
  it('asks for a registration for an instrument from before 1975 in Great Britain, and bars a later one', () => {
    expect(ask(elephant).outcome).toBe('papers');
    expect(ask({ ...elephant, yearMade: 1975 }).outcome).toBe('prohibited');
    expect(ask({ ...elephant, ivoryVolPct: 20 }).outcome).toBe('prohibited');
    const unknown: Given = { material: 'ivory:african-elephant', ivoryVolPct: 0.1 };
    expect(ask(unknown).reasons.find(({ rule }) => rule?.id === 'uk-ivory-ban')).toMatchObject({ kind: 'missing-fact', outcome: 'ask', missing: ['yearMade'] });
  });

  // 50 CFR 17.40(e)(3), as read: every condition, or the antique.
  it('opens the small share in the United States only where every condition holds', () => {
    const small: Given = { material: 'ivory:african-elephant', yearMade: 1950, ivoryMassG: 150, ivoryMassUncertaintyG: 5, ivoryMassHow: 'measured', ivoryRaw: false, ivoryFixed: true, ivoryVolPct: 0.1, ivoryShareOfValuePct: 2, importedToUSBefore1990: true, repairedWithListedSpeciesSince1973: true };
    const here = { from: 'US', to: 'US' } as const;
    expect(ask(small, here).outcome).toBe('papers');
    expect(ask({ ...small, ivoryMassG: 240 }, here).outcome).toBe('prohibited');
    expect(ask({ ...small, ivoryMassG: 193 }, here).outcome).toBe('ask');
    expect(ask({ ...small, ivoryMassHow: 'estimated' }, here).outcome).toBe('prohibited');
    expect(ask({ ...small, ivoryMassG: 240, yearMade: 1900, repairedWithListedSpeciesSince1973: false }, here).outcome).toBe('papers');
  });

  it('lets the worst of both ends win, and asks where a country has no rules in the table', () => {
    expect(ask({ ...elephant, playedUntilRecently: true }, { from: 'DE', to: 'US' }).outcome).toBe('prohibited');
    expect(ask({ material: 'wood:other-rosewood', finished: true }, { from: 'DE', to: 'JP', action: 'ship-sold' }).reasons.map(({ kind }) => kind)).toContain('no-rules-known');
  });

  it('takes a sale between two members of the union as one within it', () => {
    const { reasons } = ask(elephant, { from: 'DE', to: 'FR', action: 'ship-sold' });
    expect(reasons.map(({ rule }) => rule?.id)).toContain('eu-ivory-within');
    expect(reasons.map(({ rule }) => rule?.id)).not.toContain('eu-ivory-across');
  });

  it('asks where the species is not known, a rule is past its review, or nothing speaks of the material', () => {
    expect(ask({ ...elephant, material: 'ivory' }).reasons.map(({ kind }) => kind)).toContain('species');
    expect(ask(elephant, { date: '2027-06-01' }).reasons.map(({ kind }) => kind)).toContain('past-review');
    expect(ask({ material: 'bone' })).toMatchObject({ outcome: 'ask', reasons: [{ kind: 'no-rule-matched' }] });
  });

  it('does not apply a rule before its day', () => {
    expect(ask(elephant, { date: '2020-01-01' }).reasons.map(({ rule }) => rule?.id)).not.toContain('uk-ivory-register');
  });

  it.each(listedMaterials)('never says that %s is free to go', (material) => {
    for (const action of ['sell', 'ship-sold', 'travel', 'move-own'] as const) for (const to of ['GB', 'US', 'DE', 'BR']) {
      const { outcome, reasons } = ask({ material }, { from: 'DE', to, action });
      expect(reasons.length).toBeGreaterThan(0);
      expect(['prohibited', 'papers', 'ask', 'note']).toContain(outcome);
    }
  });
});

describe('mass of ivory', () => {
  // 52 naturals, head 23 × 50 mm and tail 13 × 98 mm at 1.8 g/cm³, worked by hand.
  it.each([[0.8, 182], [1, 227], [1.5, 340]])('of a keyboard %d mm thick is %d g', (thickness, mass) => {
    const pieces = [{ areaMm2: squareMillimetres(23 * 50 + 13 * 98), thicknessMm: millimetres(thickness), thicknessUncertaintyMm: millimetres(0.02), count: 52 }];
    const found = ivoryMassOf(pieces, gramsPerCubicCentimetre(1.8), gramsPerCubicCentimetre(0));
    expect(Math.round(found.massG)).toBe(mass);
    expect(found.massUncertaintyG / found.massG).toBeCloseTo(0.02 / thickness, 12);
  });
});

describe('conditions in three values', () => {
  const known = factsSchema.parse({ material: 'bone', yearMade: 1950 });
  const [yes, no, open] = [{ fact: 'yearMade', below: 1975 }, { fact: 'yearMade', atLeast: 1975 }, { fact: 'ivoryVolPct', below: 1 }] as const;
  // Kleene's strong tables.
  it.each([
    [{ all: [yes, open] }, 'unknown'], [{ all: [no, open] }, 'no'], [{ any: [yes, open] }, 'yes'], [{ any: [no, open] }, 'unknown'], [{ not: open }, 'unknown'], [{ not: no }, 'yes'],
  ] as const)('%j is %s', (condition, verdict) => {
    expect(holds(condition, known)).toBe(verdict);
  });
});

describe('materials', () => {
  it('belong to their wider kinds, and perhaps to narrower ones', () => {
    expect(belongsTo('ivory:african-elephant', 'appendix-I')).toBe('yes');
    expect(belongsTo('ivory', 'ivory:african-elephant')).toBe('maybe');
    expect(belongsTo('ivory:hippopotamus', 'ivory:elephant')).toBe('no');
  });
});
