import { runOperation } from '#operation';
import { mustBe } from '#result';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { keyLevelOperation, keyTopChangeOperation, regulationOperation } from './index.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const base = { letOffMm: 1.5, distanceRatio: 5.3, keyEdgeMm: 238, keyFrontMm: 225, lossMm: 0.3 };
const solve = (input: object) => mustBe(runOperation(regulationOperation, input));
const pathsOf = (input: unknown): readonly string[] => {
  const result = runOperation(regulationOperation, input);
  return result.ok ? [] : result.issues.map(({ code, path }) => `${code} ${path}`);
};

/** Where a growing function passes nought, by halving. */
function rootOf(f: (x: number) => number, low: number, high: number): number {
  let [lo, hi] = [low, high];
  for (let step = 0; step < 200; step += 1) {
    const middle = (lo + hi) / 2;
    if (f(middle) < 0) lo = middle;
    else hi = middle;
  }
  return (lo + hi) / 2;
}

describe('regulation', () => {
  it('solves each of the three from the other two', () => {
    fc.assert(fc.property(between(4.5, 6.5), between(38, 52), between(8, 12), between(0, 3), between(0, 1), (distanceRatio, blowMm, dipMm, letOffMm, lossMm) => {
      const given = { ...base, distanceRatio, letOffMm, lossMm };
      const { aftertouchMm } = solve({ ...given, blowMm, dipMm });
      if (aftertouchMm < 0) return;
      expect(solve({ ...given, blowMm, aftertouchMm }).dipMm).toBeCloseTo(dipMm, 9);
      expect(solve({ ...given, dipMm, aftertouchMm }).blowMm).toBeCloseTo(blowMm, 9);
    }));
  });

  it('lets go where a key pressed down little by little brings the hammer to its let-off', () => {
    const { travelToLetOffMm, edgeTravelToLetOffMm, aftertouchMm } = solve({ ...base, blowMm: 45, dipMm: 10 });
    const hammerLeft = (edge: number): number => 45 - 5.3 * Math.max(0, (edge * 225) / 238 - 0.3);
    const edge = rootOf((travel) => 1.5 - hammerLeft(travel), 0, 20);
    expect(edgeTravelToLetOffMm).toBeCloseTo(edge, 9);
    expect(travelToLetOffMm).toBeCloseTo((edge * 225) / 238, 9);
    expect(aftertouchMm).toBeCloseTo(10 - edge, 9);
  });

  it('says that a key lands too early rather than hiding it', () => {
    expect(solve({ ...base, blowMm: 50, dipMm: 9 })).toMatchObject({ letsOff: false, aftertouchMm: expect.closeTo(9 - (48.5 / 5.3 + 0.3) * (238 / 225), 9) });
  });

  it('refuses a dip that leaves the hammer no travel, with the dip that would', () => {
    const result = runOperation(regulationOperation, { ...base, dipMm: 1, aftertouchMm: 1 });
    expect(result).toMatchObject({ ok: false, issues: [{ code: 'unreachable', path: 'dipMm', given: 1 }] });
    if (result.ok) return;
    const { min = 0, byMm = 0 } = result.issues[0]?.params as Readonly<Record<string, number>>;
    expect(min - byMm).toBeCloseTo(1, 12);
    expect(solve({ ...base, dipMm: min + 1e-9, aftertouchMm: 1 }).blowMm).toBeCloseTo(1.5, 6);
  });

  it.each([
    [{ ...base, blowMm: 1, dipMm: 10 }, ['order letOffMm']],
    [{ ...base, keyEdgeMm: 200, blowMm: 45, dipMm: 10 }, ['order keyEdgeMm']],
    [{ ...base, blowMm: 45 }, ['required dipMm']],
    [{ ...base, distanceRatio: 0, blowMm: 45, dipMm: 10 }, ['range distanceRatio']],
    [{ ...base, blowMm: 45, dipMm: 10, aftertouchMm: 1 }, ['unknown aftertouchMm']],
  ])('refuses %j', (input, expected) => {
    expect(pathsOf(input)).toEqual(expected);
  });
});

describe('new key tops', () => {
  const top = { oldThicknessMm: 1, oldDensityGPerMm3: 0.00185, newThicknessMm: 2.3, newDensityGPerMm3: 0.00119, areaMm2: 2400, centroidMm: 65, keyEdgeMm: 238, keyFrontMm: 225, planedMm: 0.4 };

  it('weigh in front what their strips weigh, each at its place', () => {
    const { frontWeightChangeG, massChangeG, levelChangeMm } = mustBe(runOperation(keyTopChangeOperation, top));
    const strips = 1300;
    const each = 2400 / strips;
    const moment = Array.from({ length: strips }, (_, index) => 238 - (index + 0.5) * (130 / strips)).reduce((sum, x) => sum + x * each * (2.3 * 0.00119 - 1 * 0.00185 - 0.4 * 0.00045), 0);
    expect(frontWeightChangeG).toBeCloseTo(moment / 225, 9);
    expect(massChangeG).toBeCloseTo(2400 * (2.3 * 0.00119 - 0.00185 - 0.4 * 0.00045), 12);
    expect(levelChangeMm).toBeCloseTo(0.9, 12);
  });

  it('cannot lie behind the balance point', () => {
    expect(runOperation(keyTopChangeOperation, { ...top, centroidMm: 240 })).toMatchObject({ ok: false, issues: [{ code: 'range', path: 'centroidMm', params: { byMm: 2 } }] });
  });
});

describe('the level of a key', () => {
  it('is that of a key turned about its back rest', () => {
    const levelling = { balancePunchingMm: 0.01, keyEdgeMm: 238, backRestMm: 170, frontPinMm: 215 };
    const { levelChangeMm, frontPunchingMm, dipChangeMm } = mustBe(runOperation(keyLevelOperation, levelling));
    const turn = Math.asin(0.01 / 170);
    expect(levelChangeMm).toBeCloseTo(-(170 + 238) * Math.sin(turn), 6);
    expect(frontPunchingMm).toBeCloseTo(-(170 + 215) * Math.sin(turn), 6);
    const dipWith = (clearance: number): number => 238 * Math.sin(Math.asin(clearance / 215));
    expect(dipChangeMm).toBeCloseTo(dipWith(9 + frontPunchingMm) - dipWith(9), 6);
  });
});
