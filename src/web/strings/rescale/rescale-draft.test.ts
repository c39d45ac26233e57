import { scaleTermsSchema } from '#instrument';
import { analyseScale } from '#strings';
import { createSay, explainIssue } from '#text';
import { describe, expect, it } from 'vitest';
import { type RescaleDraft, TRADE_STEPS, usualDraft, weightsAt, wishOf } from './rescale-draft.ts';

const coil = { name: 'Coil', metal: 'steel', shape: 'round', certificateMPa: null, testBreakN: null } as const;
const terms = scaleTermsSchema.parse({ wrapMetal: 'copper', wires: [{ ...coil, use: 'plain', diameterMm: 0.9 }, { ...coil, use: 'wrap', metal: 'copper', diameterMm: 0.4 }, { ...coil, use: 'wrap', metal: 'iron', diameterMm: 0.5 }] });
const draft: RescaleDraft = { ...usualDraft(null, analyseScale({ notes: [], sections: [], asked: {} }), 'de'), highestWoundKey: 20 };
const refusals = (change: Partial<RescaleDraft>, locale = 'de') => {
  const wish = wishOf({ ...draft, ...change }, terms, locale);
  return wish.ok ? [] : wish.issues;
};

describe('what a rescale is asked for', () => {
  it('is read in the figures of the language', () => {
    const wish = wishOf({ ...draft, coreFromMm: '0,9', coreToMm: '1,0', wrapFromMm: '0,2', wrapToMm: '0,4', wrapStepMm: '0,05', leastPct: '32,5', total: 'hold', totalKN: '170,5' }, terms, 'de');
    if (!wish.ok) throw new Error(JSON.stringify(wish.issues));
    expect(wish.value.wrapSizesMm).toEqual([0.2, 0.25, 0.3, 0.35, 0.4]);
    expect(wish.value.coreSizesMm.length).toBeGreaterThan(0);
    expect(wish.value.coreSizesMm.every((size) => size >= 0.9 && size <= 1)).toBe(true);
    expect(wish.value.limits).toEqual({ minBreakingPct: 32.5, maxBreakingPct: undefined, totalTensionN: 170_500 });
  });

  it('takes wire of the shop by its use and metal, and none of what is not to be wound', () => {
    const shop = wishOf({ ...draft, plain: 'shop', wraps: 'shop' }, terms, 'de');
    expect(shop).toMatchObject({ ok: true, value: { plainSizesMm: [0.9], wrapSizesMm: [0.4] } });
    expect(wishOf({ ...draft, highestWoundKey: 0, wrapStepMm: 'nothing read' }, terms, 'de')).toMatchObject({ ok: true, value: { coreSizesMm: [], wrapSizesMm: [] } });
  });

  it('holds or caps the load, or leaves it free', () => {
    const limits = (total: RescaleDraft['total']) => { const wish = wishOf({ ...draft, total, totalKN: '160' }, terms, 'de'); return wish.ok ? wish.value.limits : undefined; };
    expect(limits('hold')).toMatchObject({ totalTensionN: 160_000 });
    expect(limits('cap')).toMatchObject({ maxTotalTensionN: 160_000 });
    expect(limits('free')).not.toHaveProperty('totalTensionN');
  });

  it('refuses by field, all of them at once, and in words', () => {
    const issues = refusals({ leastPct: '-3', total: 'hold', totalKN: 'heavy', nearTarget: 'much', target: 'line', lowestN: '20', highestN: '900' });
    expect(issues.map(({ path }) => path).sort()).toEqual(['leastPct', 'lowestN', 'totalKN']);
    for (const locale of ['en', 'de']) for (const issue of issues) expect(explainIssue(createSay(locale), issue, locale)).not.toMatch(/[{}]/u);
    expect(refusals({ wrapFromMm: '0,8', wrapToMm: '0,2' }).map(({ path }) => path)).toContain('wrapToMm');
    expect(refusals({ wrapFromMm: '0,1', wrapToMm: '3', wrapStepMm: '0,05' })).toMatchObject([{ path: 'wrapStepMm', params: { min: 0.075 } }]);
  });

  it('weighs tension against inharmonicity in even steps of their ratio, both together one', () => {
    const ratios = Array.from({ length: TRADE_STEPS }, (_, trade) => {
      const { tensionSmoothness = 0, inharmonicitySmoothness = 0 } = weightsAt(trade, { sizeChange: 'none', nearTarget: 'none' });
      expect(tensionSmoothness + inharmonicitySmoothness).toBeCloseTo(1, 12);
      return Math.log10(inharmonicitySmoothness / tensionSmoothness);
    });
    for (const [at, ratio] of ratios.entries()) if (at > 0) expect(ratio - (ratios[at - 1] ?? 0)).toBeCloseTo(0.75, 9);
  });
});
