import type { OctaveType } from '#instrument';
import { hertz, ratio } from '#units';
import fc from 'fast-check';
import { Matrix, solve } from 'ml-matrix';
import { bisect } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { type CurveQuestion, beatOf, stretchOf, tuningCurveOf, upperPartialOf, usualOctaveRules } from './index.ts';
import { modelKeys } from './testing/model-piano.ts';

const question = (more: Partial<CurveQuestion> = {}): CurveQuestion => ({ keys: modelKeys, rules: usualOctaveRules, anchorKey: 49, smoothness: 100, ...more });
const solved = (more: Partial<CurveQuestion> = {}) => {
  const result = tuningCurveOf(question(more));
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
};
const everywhere = (type: OctaveType) => [{ fromKey: 1, toKey: 128, type, weight: 1 }];
const beatlessOf = (lower: number, k: number): number => stretchOf(modelKeys[lower - 1]?.string ?? { inharmonicityB: ratio(0) }, modelKeys[lower + 11]?.string ?? { inharmonicityB: ratio(0) }, k) ?? Number.NaN;

/** The rows of the problem, dense: octaves, then third differences times √λ. */
function denseRows(smoothness: number): readonly { readonly row: readonly number[]; readonly right: number }[] {
  const unit = (entries: Readonly<Record<number, number>>): readonly number[] => Array.from({ length: 88 }, (_, index) => entries[index] ?? 0);
  const octaves = Array.from({ length: 76 }, (_, index) => {
    const rule = usualOctaveRules.find(({ fromKey, toKey }) => index + 1 >= fromKey && index + 1 <= toKey);
    return { row: unit({ [index]: -1, [index + 12]: 1 }), right: beatlessOf(index + 1, upperPartialOf(rule?.type ?? '2:1')) };
  });
  const root = Math.sqrt(smoothness);
  return [...octaves, ...Array.from({ length: 85 }, (_, index) => ({ row: unit({ [index]: -root, [index + 1]: 3 * root, [index + 2]: -3 * root, [index + 3]: root }), right: 0 }))];
}

describe('the tuning curve', () => {
  it('is the least-squares answer of ml-matrix to the same rows', () => {
    const rows = denseRows(100);
    const theirs = solve(new Matrix(rows.map(({ row }) => row.filter((_, index) => index !== 48))), Matrix.columnVector(rows.map(({ right }) => right)), true).to1DArray();
    const own = solved().offsetsCents.filter((_, index) => index !== 48);
    own.forEach((offset, index) => { expect(offset).toBeCloseTo(theirs[index] ?? Number.NaN, 7); });
  });

  it('stays at A4, and follows the chain of its octaves where smoothness hardly weighs', () => {
    const { offsetsCents } = solved({ rules: everywhere('4:2'), smoothness: 1e-6 });
    expect(offsetsCents[48]).toBe(0);
    let up = 0;
    for (const lower of [49, 61, 73]) expect(offsetsCents[lower + 11]).toBeCloseTo(up += beatlessOf(lower, 2), 4);
    let down = 0;
    for (const lower of [37, 25, 13, 1]) expect(offsetsCents[lower - 1]).toBeCloseTo(down -= beatlessOf(lower, 2), 4);
  });

  it('is never beaten by another curve through the same anchor', () => {
    const rows = denseRows(100);
    const { offsetsCents: best } = solved();
    const costOf = (x: readonly number[]): number => rows.reduce((sum, { row, right }) => sum + (row.reduce((dot, entry, index) => dot + entry * (x[index] ?? 0), 0) - right) ** 2, 0);
    const least = costOf(best);
    fc.assert(fc.property(fc.array(fc.double({ min: -5, max: 5, noNaN: true }), { minLength: 88, maxLength: 88 }), fc.double({ min: 1e-6, max: 1, noNaN: true }), (change, size) => {
      expect(costOf(best.map((offset, index) => (index === 48 ? 0 : offset + size * (change[index] ?? 0))))).toBeGreaterThanOrEqual(least * (1 - 1e-12));
    }));
  });

  it('leaves flexible strings in equal temperament', () => {
    for (const offset of solved({ keys: modelKeys.map(({ key }) => ({ key, string: { inharmonicityB: ratio(0) } })) }).offsetsCents) expect(Math.abs(offset)).toBeLessThan(1e-12);
  });

  it('takes listed partials as it takes the B they follow from', () => {
    const listed = modelKeys.map(({ key, string }) => ({ key, string: { partialsHz: Array.from({ length: 6 }, (_, i) => hertz(100 * (i + 1) * Math.sqrt(1 + ('inharmonicityB' in string ? string.inharmonicityB : 0) * (i + 1) ** 2))) } }));
    solved({ keys: listed }).offsetsCents.forEach((offset, index) => { expect(offset).toBeCloseTo(solved().offsetsCents[index] ?? Number.NaN, 8); });
  });

  it('carries the uncertainty of B: twice the doubt is twice the doubt, none at the anchor', () => {
    const doubtful = (share: number) => solved({ keys: modelKeys.map((one) => ({ ...one, inharmonicityUncertainty: 'inharmonicityB' in one.string ? share * one.string.inharmonicityB : 0 })) }).uncertaintiesCents ?? [];
    const [once, twice] = [doubtful(0.01), doubtful(0.02)];
    expect(once[48]).toBe(0);
    once.forEach((u, index) => { if (index !== 48) expect((twice[index] ?? 0) / u).toBeCloseTo(2, 2); });
    expect(solved().uncertaintiesCents).toBeUndefined();
  });

  it('says which list of partials is too short, and when octaves are too few', () => {
    const short = modelKeys.map((one) => (one.key === 3 ? { key: 3, string: { partialsHz: [hertz(30), hertz(60.1)] } } : one));
    expect(tuningCurveOf(question({ keys: short }))).toMatchObject({ ok: false, issues: [{ code: 'length', path: 'keys[2].partialsHz', given: 2 }] });
    for (const keys of [modelKeys.slice(40, 53), modelKeys.slice(60)]) expect(tuningCurveOf(question({ keys }))).toMatchObject({ ok: false, issues: [{ code: 'unsolvable', path: 'keys' }] });
  });
});

describe('a stretched octave', () => {
  it('is where a root finder of simple-statistics finds that its partials do not beat', () => {
    const b = fc.double({ min: 0, max: 0.02, noNaN: true });
    fc.assert(fc.property(b, b, fc.constantFrom(1, 2, 3), (lower, upper, k) => {
      const excess = (centsWide: number): number => beatOf({ frequencyHz: hertz(220), string: { inharmonicityB: ratio(lower) } }, { frequencyHz: hertz(440 * 2 ** (centsWide / 1200)), string: { inharmonicityB: ratio(upper) } }, k) ?? Number.NaN;
      const root = bisect(excess, -500, 500, 200, 1e-11);
      expect(stretchOf({ inharmonicityB: ratio(lower) }, { inharmonicityB: ratio(upper) }, k)).toBeCloseTo(root, 7);
    }));
  });
});
