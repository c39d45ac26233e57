import { runOperation } from '#operation';
import { mustBe } from '#result';
import { type Grams, grams } from '#units';
import fc from 'fast-check';
import { Matrix, solve as solveLinear } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { hammerBoreOperation, hammerCurveOperation, hammerTargetOf, riseOf } from './index.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const RADIANS = Math.PI / 180;

describe('the bore of a hammer', () => {
  const strikePoint = (shankDeg: number, boreMm: number, rakeDeg: number) => ({
    x: 130 * Math.cos(shankDeg * RADIANS) - boreMm * Math.sin((shankDeg - rakeDeg) * RADIANS),
    y: 130 * Math.sin(shankDeg * RADIANS) + boreMm * Math.cos((shankDeg - rakeDeg) * RADIANS),
  });

  it('brings the head to the string: the shank raised from far below until it does', () => {
    fc.assert(fc.property(between(20, 70), between(-10, 10), between(15, 90), (boreMm, rakeDeg, rise) => {
      const found = mustBe(runOperation(hammerBoreOperation, { stringHeightMm: 140 + rise, centreHeightMm: 140, boreMm, hammerMm: 130, rakeDeg }));
      let [low, high] = [-60, 45];
      for (let step = 0; step < 100; step += 1) {
        const middle = (low + high) / 2;
        if (strikePoint(middle, boreMm, rakeDeg).y < rise) low = middle;
        else high = middle;
      }
      expect(found.shankDeg).toBeCloseTo(low, 9);
      expect(found.squarenessDeg).toBeCloseTo(low - rakeDeg, 9);
      expect(found.strikeShiftMm).toBeCloseTo(strikePoint(0, boreMm, rakeDeg).x - strikePoint(low, boreMm, rakeDeg).x, 8);
    }));
  });

  it('is level with the bore it names', () => {
    fc.assert(fc.property(between(-10, 10), between(20, 80), (rakeDeg, rise) => {
      const input = { stringHeightMm: 100 + rise, centreHeightMm: 100, boreMm: 50, hammerMm: 130, rakeDeg };
      const { levelBoreMm } = mustBe(runOperation(hammerBoreOperation, input));
      const level = mustBe(runOperation(hammerBoreOperation, { ...input, boreMm: levelBoreMm }));
      expect(level.shankDeg).toBeCloseTo(0, 9);
      expect(level.strikeShiftMm).toBeCloseTo(0, 9);
    }));
  });

  it('refuses a bore that cannot reach, with the one that just does', () => {
    const far = { stringHeightMm: 300, centreHeightMm: 140, boreMm: 30, hammerMm: 130, rakeDeg: 3 };
    const result = runOperation(hammerBoreOperation, far);
    expect(result).toMatchObject({ ok: false, issues: [{ code: 'unreachable', path: 'boreMm', given: 30 }] });
    if (result.ok) return;
    const { min = 0, byMm = 0 } = result.issues[0]?.params as Readonly<Record<string, number>>;
    expect(min - byMm).toBeCloseTo(30, 12);
    expect(runOperation(hammerBoreOperation, { ...far, boreMm: min + 1e-6 }).ok).toBe(true);
    expect(runOperation(hammerBoreOperation, { ...far, boreMm: min - 1e-6 }).ok).toBe(false);
  });

  it('refuses a centre at or above the string', () => {
    expect(runOperation(hammerBoreOperation, { stringHeightMm: 190, centreHeightMm: 195, boreMm: 50, hammerMm: 130, rakeDeg: 0 })).toMatchObject({ ok: false, issues: [{ code: 'order', path: 'centreHeightMm', given: 195, params: { byMm: 5 } }] });
    expect(runOperation(hammerBoreOperation, { stringHeightMm: 190, centreHeightMm: 190, boreMm: 50, hammerMm: 130, rakeDeg: 0 }).ok).toBe(false);
  });
});

describe('the curve of hammer weights', () => {
  const anchorsOf = (...pairs: readonly (readonly [number, number])[]) => pairs.map(([key, weightG]) => ({ key, weightG }));

  it('is the parabola a linear solver finds', () => {
    fc.assert(fc.property(fc.uniqueArray(fc.integer({ min: 1, max: 88 }), { minLength: 3, maxLength: 3 }), between(9, 12), between(-0.06, -0.01), between(-1e-4, 1e-4), (keys, top, slope, bend) => {
      const weightAt = (key: number): number => top + slope * key + bend * key ** 2;
      const { weightsG } = mustBe(runOperation(hammerCurveOperation, { anchors: anchorsOf(...keys.map((key) => [key, weightAt(key)] as const)), keys: 88 }));
      const [a = 0, b = 0, c = 0] = solveLinear(new Matrix(keys.map((key) => [1, key / 88, (key / 88) ** 2])), Matrix.columnVector(keys.map(weightAt))).to1DArray();
      for (const [index, weight] of weightsG.entries()) expect(weight).toBeCloseTo(a + (b * (index + 1)) / 88 + c * ((index + 1) / 88) ** 2, 6);
    }));
  });

  it('takes its anchors in any order, and passes through them', () => {
    const anchors = anchorsOf([40, 8.9], [88, 5.6], [1, 11.2]);
    const { weightsG, falling } = mustBe(runOperation(hammerCurveOperation, { anchors }));
    expect([weightsG[0], weightsG[39], weightsG[87]]).toEqual([expect.closeTo(11.2, 12), expect.closeTo(8.9, 12), expect.closeTo(5.6, 12)]);
    expect([weightsG.length, falling]).toEqual([88, true]);
  });

  it('says from where it rises, though its anchors fall', () => {
    const answer = mustBe(runOperation(hammerCurveOperation, { anchors: anchorsOf([1, 11], [40, 6], [88, 5.9]) }));
    expect(answer.falling).toBe(false);
    const from = answer.risesFromKey ?? 0;
    const { weightsG } = answer;
    expect(weightsG[from - 1]).toBeGreaterThanOrEqual(weightsG[from - 2] ?? Infinity);
    expect(weightsG.slice(0, from - 1).every((weight, index, all) => index === 0 || weight < (all[index - 1] ?? 0))).toBe(true);
    expect(hammerTargetOf([{ key: 1, weightG: grams(11) }, { key: 40, weightG: grams(6) }, { key: 88, weightG: grams(5.9) }], 88)).toMatchObject({ ok: false, issues: [{ code: 'unsolvable', path: 'anchors', params: { reason: 'curveRises', key: from, byG: answer.largestRiseG } }] });
    expect(hammerTargetOf([{ key: 1, weightG: grams(11.2) }, { key: 40, weightG: grams(8.9) }, { key: 88, weightG: grams(5.6) }], 88).ok).toBe(true);
  });

  it('takes a level row for one that does not fall', () => {
    expect(riseOf([3, 2, 2, 1].map(grams))).toEqual({ key: 3, byG: 0 });
    expect(riseOf([3, 2, 1].map(grams))).toBeUndefined();
    expect(riseOf([] as Grams[])).toBeUndefined();
  });

  it.each([
    [{ anchors: anchorsOf([1, 11], [1, 9], [88, 5]) }, ['duplicate anchors[1].key']],
    [{ anchors: anchorsOf([1, 11], [40, 9], [90, 5]) }, ['range anchors[2].key']],
    [{ anchors: anchorsOf([1, 11], [40, 9]) }, ['length anchors']],
    [{ anchors: anchorsOf([1, 11], [10, 4], [20, 1]), keys: 30 }, []],
    [{ anchors: anchorsOf([1, 11], [10, 6], [20, 0.1]) }, ['unsolvable anchors']],
    [{ anchors: anchorsOf([1, 11], [40.5, 9], [88, 5]) }, ['type anchors[1].key']],
  ])('of %j refuses %j', (input, expected) => {
    const result = runOperation(hammerCurveOperation, input);
    expect(result.ok ? [] : result.issues.map(({ code, path }) => `${code} ${path}`)).toEqual(expected);
  });
});
