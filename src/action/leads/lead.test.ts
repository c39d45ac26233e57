import { type AnyOperation, runOperation } from '#operation';
import { mustBe } from '#result';
import { grams, gramsPerCubicMillimetre, millimetres } from '#units';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { leadEffectOf, leadEffectOperation, leadInertiaOf, leadMassOf, leadMomentOf, leadTrimOperation, meetingLeadsOf } from '../index.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const lead = fc.record({ diameterMm: between(5, 15).map(millimetres), positionMm: between(-120, 220).map(millimetres) });
const bed = { keyWidthMm: millimetres(13), leadDensityGPerMm3: gramsPerCubicMillimetre(0.01134), woodDensityGPerMm3: gramsPerCubicMillimetre(0.00045) };

const pathsOf = (operation: AnyOperation, input: unknown): readonly string[] => {
  const result = runOperation(operation, input);
  return result.ok ? [] : result.issues.map(({ code, path }) => `${code} ${path}`);
};

describe('a lead', () => {
  it('weighs, turns and resists turning as its slivers do together', () => {
    const one = { diameterMm: millimetres(12.7), positionMm: millimetres(180) };
    const slivers = 400;
    const side = one.diameterMm / slivers;
    let [mass, moment, inertia] = [0, 0, 0];
    for (let across = 0; across < slivers; across += 1) {
      for (let up = 0; up < slivers; up += 1) {
        const [x, y] = [(across + 0.5) * side - one.diameterMm / 2, (up + 0.5) * side - one.diameterMm / 2];
        if (Math.hypot(x, y) > one.diameterMm / 2) continue;
        const sliver = side * side * bed.keyWidthMm * (bed.leadDensityGPerMm3 - bed.woodDensityGPerMm3);
        mass += sliver;
        moment += sliver * (one.positionMm + x);
        inertia += sliver * ((one.positionMm + x) ** 2 + y ** 2);
      }
    }
    expect(leadMassOf(one, bed) / mass).toBeCloseTo(1, 3);
    expect(leadMomentOf(one, bed) / moment).toBeCloseTo(1, 3);
    expect(leadInertiaOf(one, bed) / inertia).toBeCloseTo(1, 3);
    const own = leadInertiaOf(one, bed) - leadMassOf(one, bed) * one.positionMm ** 2;
    expect(own / (inertia - moment ** 2 / mass)).toBeCloseTo(1, 2);
  });

  it('never adds less inertia than its moment asks of that mass', () => {
    fc.assert(fc.property(fc.array(lead, { minLength: 1, maxLength: 8 }), (leads) => {
      const effect = leadEffectOf({ ...bed, bareFrontWeightG: grams(0), keyFrontMm: millimetres(225), leads });
      const mass = effect.netMassesG.reduce((sum, each) => sum + each, 0);
      expect(effect.inertiaGMm2).toBeGreaterThanOrEqual((effect.frontWeightG * 225) ** 2 / mass);
    }));
  });
});

describe('lead-effect', () => {
  const key = { bareFrontWeightG: 2, keyFrontMm: 225, keyWidthMm: 13, leads: [{ diameterMm: 12.7, positionMm: 180 }, { diameterMm: 12.7, positionMm: -40 }] };

  it('leaves a bare key as it is', () => {
    expect(mustBe(runOperation(leadEffectOperation, { ...key, leads: [] }))).toEqual({ netMassesG: [], frontWeightG: 2, inertiaGMm2: 0, effectiveMassG: 0, breakPointsMPerS2: [], meeting: [] });
  });

  it('knows no break point for a lead that never helps', () => {
    expect(mustBe(runOperation(leadEffectOperation, key)).breakPointsMPerS2).toEqual([expect.closeTo(12.258, 3), null]);
  });

  it('refuses holes that are not wholly on the key, and says by how much', () => {
    const result = runOperation(leadEffectOperation, { ...key, keyFrontLengthMm: 185, keyBackLengthMm: 45 });
    expect(result).toMatchObject({ ok: false, issues: [
      { code: 'range', path: 'leads[0].positionMm', given: 180, params: { reason: 'offKey', byMm: expect.closeTo(1.35, 9) } },
      { code: 'range', path: 'leads[1].positionMm', given: -40, params: { byMm: expect.closeTo(1.35, 9) } },
    ] });
    expect(runOperation(leadEffectOperation, { ...key, keyFrontLengthMm: 186.35, keyBackLengthMm: 46.35 }).ok).toBe(true);
    expect(runOperation(leadEffectOperation, { ...key, keyFrontLengthMm: 185 })).toMatchObject({ issues: [{ allowed: expect.stringContaining('at most 178.65') }] });
  });

  it('finds the leads that meet, and those alone', () => {
    fc.assert(fc.property(fc.array(lead, { maxLength: 6 }), (leads) => {
      const clear = leads.every((one, index) => leads.every((other, place) => {
        const [low, high] = one.positionMm <= other.positionMm ? [one, other] : [other, one];
        return index === place || low.positionMm + low.diameterMm / 2 <= high.positionMm - high.diameterMm / 2;
      }));
      expect(meetingLeadsOf(leads).length === 0).toBe(clear);
    }));
  });
});

describe('lead-trim', () => {
  const trim = { frontWeightChangeG: 1, positionMm: 180, keyWidthMm: 13, keyFrontMm: 225 };

  it('takes off as much as a plug of that diameter weighs', () => {
    fc.assert(fc.property(between(0.01, 20), between(20, 220), (change, positionMm) => {
      const { drillDiameterMm } = mustBe(runOperation(leadTrimOperation, { ...trim, frontWeightChangeG: change, positionMm }));
      const plug = mustBe(runOperation(leadEffectOperation, { bareFrontWeightG: 0, keyFrontMm: 225, keyWidthMm: 13, leads: [{ diameterMm: drillDiameterMm, positionMm }], woodDensityGPerMm3: 0 }));
      expect(plug.frontWeightG / change).toBeCloseTo(1, 10);
    }));
  });

  it('refuses a drill wider than the lead, with what the whole lead would give', () => {
    const result = runOperation(leadTrimOperation, { ...trim, frontWeightChangeG: 20, diameterMm: 12.7 });
    expect(result).toMatchObject({ ok: false, issues: [{ code: 'unreachable', path: 'frontWeightChangeG', given: 20 }] });
    if (result.ok) return;
    const { reachableG = 0, neededMm = 0, byMm = 0 } = result.issues[0]?.params as Readonly<Record<string, number>>;
    expect(neededMm - byMm).toBeCloseTo(12.7, 12);
    expect(mustBe(runOperation(leadTrimOperation, { ...trim, frontWeightChangeG: reachableG })).drillDiameterMm).toBeCloseTo(12.7, 12);
    expect(runOperation(leadTrimOperation, { ...trim, frontWeightChangeG: 14, diameterMm: 12.7 }).ok).toBe(true);
  });

  it('needs a lead in front of the balance point', () => {
    expect(pathsOf(leadTrimOperation, { ...trim, positionMm: 0 })).toEqual(['range positionMm']);
    expect(pathsOf(leadTrimOperation, { ...trim, positionMm: -20 })).toEqual(['range positionMm']);
  });
});
