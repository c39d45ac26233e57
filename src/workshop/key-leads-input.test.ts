import { keyboardLeads, leadEffectOf } from '#action';
import { mustBe } from '#result';
import { describe, expect, it } from 'vitest';
import { keyLeadsInputOf } from './index.ts';
import { materialOf, readingOf, twoKeys } from './testing/leaded-keys.ts';

const gathered = keyLeadsInputOf(materialOf(twoKeys));
const c4 = gathered.keys.find(({ key }) => key === 40);

describe('what the leads of a piano are worked out from', () => {
  it('takes the effect of the leads found off the front weight weighed, so that putting them back gives it again', () => {
    expect(gathered.keys.map(({ key }) => key)).toEqual([40, 42]);
    const { bareFrontWeightG, keyFrontMm, existingHoles, keyWidthMm, leadDensityGPerMm3, woodDensityGPerMm3 } = c4?.question ?? expect.fail();
    expect(bareFrontWeightG).toBeLessThan(12);
    expect(leadEffectOf({ bareFrontWeightG, keyFrontMm, keyWidthMm, leadDensityGPerMm3, woodDensityGPerMm3, leads: existingHoles }).frontWeightG).toBeCloseTo(24.6, 10);
  });

  it('a lead of 12.7 mm through 13 mm of wood weighs 18.7 g gross: handbook of key leading', () => {
    const { keyWidthMm, leadDensityGPerMm3 } = c4?.question ?? expect.fail();
    expect((leadDensityGPerMm3 * Math.PI * 12.7 ** 2 * keyWidthMm) / 4).toBeCloseTo(18.7, 1);
  });

  it('aims at the front weight the planned touch needs, and at one noted as planned before that', () => {
    // Balance of moments: FW = R·SW + K·WW − BW. Nothing changes but BW, from 39 to 49 − 13 = 36: the front is to be 3 g heavier.
    expect(c4?.question.targetFrontWeightG).toBeCloseTo(27.6, 2);
    const noted = keyLeadsInputOf(materialOf([...twoKeys, readingOf(['key', 40, 'frontWeightG', 31.25], 'planned')]));
    expect(noted.keys[0]?.question.targetFrontWeightG).toBe(31.25);
    expect(noted.assumed.find(({ what }) => what === 'targetPlanned')?.keys).toEqual([40]);
    expect(noted.assumed.find(({ what }) => what === 'targetReckoned')?.keys).toEqual([42]);
  });

  it('lists every rule nobody stated, and none that was stated', () => {
    const names = gathered.assumed.map(({ what }) => what);
    expect(names).toEqual(['drillsFound', 'gapUsual', 'gridUsual', 'toleranceUsual', 'mostLeadsUsual', 'newHoleUsual', 'benchUsual', 'trimUsual', 'leadUsual', 'woodUsual', 'keepOutsUsual', 'noLeadsHere', 'targetReckoned']);
    expect(gathered.rules.drillsMm).toEqual([11, 12.7]);
    const stated = keyLeadsInputOf(materialOf(twoKeys, { terms: { drillsMm: [9.5], leadGapMm: 4, leadGridMm: 2, leadToleranceG: 0.2, mostLeads: 8, newHoleCostG: 0, leadCostG: 5, plugCostG: 12, trimCostG: 8, trimDrillsMm: [4], leadGPerMm3: 0.0098, woodGPerMm3: 0.0004, keepOuts: [{ fromMm: -35, toMm: 35 }] } }));
    expect(stated.assumed.map(({ what }) => what)).toEqual(['noLeadsHere', 'targetReckoned']);
    expect(stated.rules).toMatchObject({ drillsMm: [9.5], gapMm: 4, gridMm: 2, toleranceG: 0.2, maxLeads: 6, newHoleCostG: 0, leadCostG: 5, plugCostG: 12, trimCostG: 8, trimDrillsMm: [4], leadDensityGPerMm3: 0.0098 });
    expect(stated.keys[0]?.question.keepOutsMm).toEqual([[-35, 35], [234, 1238], [-1000, -186]]);
  });

  it('puts new holes behind the balance point only where the bare key is too heavy at the front', () => {
    expect(Math.min(...(c4?.question.gridMm ?? []))).toBe(1);
    const light = keyLeadsInputOf(materialOf([...twoKeys, readingOf(['key', 40, 'frontWeightG', 2], 'planned')]));
    expect(Math.min(...(light.keys[0]?.question.gridMm ?? []))).toBe(-190);
  });

  it('is solved: old holes first, the target met within the tolerance, nothing in a keep-out', () => {
    const { keys } = mustBe(keyboardLeads(gathered.keys.map(({ question }) => question)));
    for (const [index, { frontWeightG, leads, feasible, proven }] of keys.entries()) {
      const { targetFrontWeightG } = gathered.keys[index]?.question ?? expect.fail();
      expect({ feasible, proven }).toEqual({ feasible: true, proven: true });
      expect(Math.abs(frontWeightG - targetFrontWeightG)).toBeLessThanOrEqual(0.1 + 1e-9);
      for (const { positionMm, diameterMm, hole } of leads) if (hole === 'new') expect([positionMm - diameterMm / 2 >= 40, positionMm + diameterMm / 2 <= 193]).toEqual([true, true]);
    }
    expect(keys[0]?.leads.filter(({ hole }) => hole === 'existing').length).toBeGreaterThan(0);
  });

  it.each([
    ['noneNoted', twoKeys.filter(({ quantity }) => !quantity.startsWith('lead')), [40, 42]],
    ['frontWeight', twoKeys.filter(({ index, quantity }) => index !== 42 || quantity !== 'frontWeightG'), [42]],
    ['width', twoKeys.filter(({ quantity }) => quantity !== 'keyWidthMm'), [40, 42]],
    ['length', twoKeys.filter(({ quantity }) => quantity !== 'keyFrontLengthMm'), [40, 42]],
    ['halfLead', twoKeys.filter(({ quantity }) => quantity !== 'lead2DiameterMm'), [40]],
    ['holesMeet', [...twoKeys, readingOf(['key', 40, 'lead3PositionMm', 108]), readingOf(['key', 40, 'lead3DiameterMm', 12])], [40]],
    ['offKey', [...twoKeys, readingOf(['key', 40, 'lead3PositionMm', 234]), readingOf(['key', 40, 'lead3DiameterMm', 12])], [40]],
  ] as const)('names the keys that cannot be worked out: %s', (what, readings, keys) => {
    const { missing, keys: worked } = keyLeadsInputOf(materialOf(readings));
    expect(missing.find((each) => each.what === what)?.keys).toEqual(expect.arrayContaining([...keys]));
    for (const key of keys) expect(worked.map((each) => each.key)).not.toContain(key);
  });

  it('without anything asked and nothing noted as planned there is no target', () => {
    const { missing } = keyLeadsInputOf(materialOf(twoKeys, { intent: null }));
    expect(missing.find(({ what }) => what === 'target')?.keys).toEqual([40, 42]);
  });
});
