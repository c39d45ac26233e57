import { metricWireSizes } from '#materials';
import { mustBe } from '#result';
import { hertz, kilogramsPerCubicMetre, millimetres, newtons, percent } from '#units';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type WireAllowances, coresByBreaking, designWound, wireLengthOf, wireOrderOf, windingFiguresOf, woundFiguresOf, wrapLengthsOf, wireStrengthOf } from './index.ts';

const stock = Array.from({ length: 24 }, (_, index) => ({ wireDiameterMm: millimetres(0.3 + index * 0.05) }));
const wish = {
  frequencyHz: hertz(41.2034), speakingLengthMm: millimetres(1250), targetTensionN: newtons(950), coresMm: [millimetres(1.1), millimetres(1.2)], wrapStock: stock,
  bareFrontMm: millimetres(20), bareRearMm: millimetres(18), stepFrontMm: millimetres(10), stepRearMm: millimetres(10),
};

describe('designing a wound string', () => {
  it('names windings in the order of their distance from the target, as the wound string itself works them out', () => {
    const designs = mustBe(designWound(wish));
    expect(designs.length).toBeGreaterThan(3);
    const off = designs.map(({ errorPct }) => Math.abs(errorPct));
    expect(off).toEqual([...off].sort((a, b) => a - b));
    for (const { coreDiameterMm, wraps, figures, errorPct } of designs) {
      const steps = wraps.length > 1 ? {} : { stepFrontMm: millimetres(0), stepRearMm: millimetres(0) };
      const { frequencyHz, speakingLengthMm, bareFrontMm, bareRearMm, stepFrontMm, stepRearMm } = { ...wish, ...steps };
      const again = mustBe(woundFiguresOf({ coreDiameterMm, wraps, frequencyHz, speakingLengthMm, bareFrontMm, bareRearMm, stepFrontMm, stepRearMm }));
      expect(figures.tensionN / again.tensionN).toBeCloseTo(1, 12);
      expect(100 * (again.tensionN / 950 - 1)).toBeCloseTo(errorPct, 9);
    }
  });

  it('misses no winding that comes nearer, by trying all of them exactly', () => {
    fc.assert(fc.property(fc.double({ min: 500, max: 1500, noNaN: true }), fc.constantFrom('single', 'double' as const), (target, layers) => {
      const small = { ...wish, targetTensionN: newtons(target), layers, wrapStock: stock.filter((_, index) => index % 3 === 0), tolerancePct: percent(1000), most: 1 };
      const found = mustBe(designWound(small))[0];
      const pairs = layers === 'single' ? small.wrapStock.map((wrap) => [wrap]) : small.wrapStock.flatMap((inner, i) => small.wrapStock.slice(i).map((outer) => [inner, outer]));
      const { frequencyHz, speakingLengthMm, bareFrontMm, bareRearMm, stepFrontMm, stepRearMm } = { ...small, ...(layers === 'single' ? { stepFrontMm: millimetres(0), stepRearMm: millimetres(0) } : {}) };
      const errors = small.coresMm.flatMap((coreDiameterMm) => pairs.map((wraps) => Math.abs(mustBe(woundFiguresOf({ coreDiameterMm, wraps, frequencyHz, speakingLengthMm, bareFrontMm, bareRearMm, stepFrontMm, stepRearMm }, 1)).tensionN / target - 1)));
      expect(Math.abs(found?.errorPct ?? Infinity) / 100).toBeCloseTo(Math.min(...errors), 9);
    }), { numRuns: 20 });
  });

  it('refuses what cannot be reached and says how near it comes', () => {
    const refused = designWound({ ...wish, targetTensionN: newtons(9000) });
    expect(refused).toMatchObject({ ok: false, issues: [{ code: 'unreachable', path: 'targetTensionN', given: 9000 }] });
    const [issue] = refused.ok ? [] : refused.issues;
    expect(Number(issue?.params?.['nearest'])).toBeLessThan(9000);
    expect(Number(issue?.params?.['off'])).toBeLessThan(-2);
    expect(designWound({ ...wish, wrapStock: [] })).toMatchObject({ ok: false, issues: [{ path: 'wrapStock' }] });
    expect(designWound({ ...wish, coresMm: [] })).toMatchObject({ ok: false, issues: [{ path: 'coresMm' }] });
  });

  it('finds the core whose load comes nearest to the one wanted', () => {
    const cores = coresByBreaking({ coresMm: metricWireSizes.map(({ diameterMm }) => diameterMm), targetTensionN: newtons(950), wantedPct: percent(45) });
    const [first, second] = cores;
    expect(Math.abs((first?.breakingPct ?? 0) - 45)).toBeLessThan(Math.abs((second?.breakingPct ?? 0) - 45));
    const { breakingLoadN } = wireStrengthOf({ diameterMm: first?.coreDiameterMm ?? millimetres(1) });
    expect((100 * 950) / breakingLoadN).toBeCloseTo(first?.breakingPct ?? 0, 9);
  });
});

const allowances: WireAllowances = { pinTurns: 3, pinDiameterMm: millimetres(7), hitchMm: millimetres(50), spareMm: millimetres(100) };
const run = { frontLengthMm: millimetres(120), speakingLengthMm: millimetres(1250), backLengthMm: millimetres(200), count: 2 };

describe('ordering wire', () => {
  it('adds up the lengths of a string by hand: 120 + 622 + 95 + 3·π·8 + 50 + 100', () => {
    expect(wireLengthOf({ frontLengthMm: millimetres(120), speakingLengthMm: millimetres(622), backLengthMm: millimetres(95) }, millimetres(1), allowances)).toBeCloseTo(987 + 24 * Math.PI, 9);
  });

  it('weighs out the wrap that the mass of the winding asks for', () => {
    const wraps = [{ wireDiameterMm: millimetres(0.5) }, { wireDiameterMm: millimetres(0.9) }];
    const wound = { coreDiameterMm: millimetres(1.2), wraps, ...run };
    const lines = mustBe(wireOrderOf([wound], allowances)).filter(({ use }) => use === 'wrap');
    const { linearDensityGPerM, coreDensityGPerM } = mustBe(windingFiguresOf(wound));
    expect(lines.reduce((sum, { massG }) => sum + massG, 0)).toBeCloseTo(2 * 1.25 * (linearDensityGPerM - coreDensityGPerM), 9);
  });

  it('leaves ends bare and steps short, turn by turn', () => {
    const [first, second] = wrapLengthsOf({ speakingLengthMm: millimetres(1000), coreDiameterMm: millimetres(1), wraps: [{ wireDiameterMm: millimetres(0.5) }, { wireDiameterMm: millimetres(1) }], bareFrontMm: millimetres(20), bareRearMm: millimetres(30), stepFrontMm: millimetres(10), stepRearMm: millimetres(15) });
    expect([first?.turns, second?.turns]).toEqual([1900, 925]);
    expect(first?.lengthMm).toBeCloseTo(Math.PI * 1.5 * 1900, 9);
    expect(second?.lengthMm).toBeCloseTo(Math.PI * 3 * 925, 9);
  });

  it('puts wire of one size on one line, and what is another wire on another', () => {
    const lines = mustBe(wireOrderOf([{ ...run, diameterMm: millimetres(1) }, { ...run, count: 3, diameterMm: millimetres(1) }, { ...run, diameterMm: millimetres(0.9) }, { ...run, diameterMm: millimetres(1), densityKgM3: kilogramsPerCubicMetre(7800) }], allowances));
    expect(lines.map(({ diameterMm, strings, densityKgM3 }) => [diameterMm, strings, densityKgM3])).toEqual([[0.9, 2, 7850], [1, 5, 7850], [1, 2, 7800]]);
  });

  it('refuses a string that nobody could wind, and no string at all', () => {
    expect(wireOrderOf([{ ...run, coreDiameterMm: millimetres(1), overallDiameterMm: millimetres(3) }])).toMatchObject({ ok: false, issues: [{ path: '[0].wraps' }] });
    expect(wireOrderOf([{ ...run, count: 0, diameterMm: millimetres(1) }])).toMatchObject({ ok: false, issues: [{ path: '[0].count' }] });
  });
});
