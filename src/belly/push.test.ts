import { mustBe } from '#result';
import { millimetres, newtons, newtonsPerMillimetre } from '#units';
import fc from 'fast-check';
import { Matrix, inverse } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { influenceOf, ladenOf, pushTestOf } from './index.ts';
import { within } from './testing/notes.ts';

const push = (force: number, deflection: number) => ({ forceN: newtons(force), deflectionMm: millimetres(deflection) });
const influence = (pushedStation: number, readStation: number, force: number, deflection: number) => ({ pushedStation, readStation, ...push(force, deflection) });
const refused = (result: { readonly ok: boolean; readonly issues?: readonly { readonly code: string; readonly path: string; readonly params?: Readonly<Record<string, unknown>> }[] }) =>
  (result.ok ? 'accepted' : (result.issues ?? []).map(({ code, path, params }) => `${code} ${path} ${String(params?.['reason'])}`));

/** A board of n stations that is surely positive definite. */
const board = fc.integer({ min: 1, max: 6 }).chain((n) => fc.array(within(-1, 1), { minLength: n * n, maxLength: n * n }).map((entries) => {
  const root = new Matrix(Array.from({ length: n }, (_, row) => entries.slice(row * n, row * n + n)));
  return root.mmul(root.transpose()).mul(300 / n).add(Matrix.eye(n).mul(30));
}));

describe('a push test', () => {
  it('finds the stiffness that made its readings, and says it is sure', () => {
    fc.assert(fc.property(within(10, 5000), fc.array(within(10, 500), { minLength: 2, maxLength: 10 }), (stiffness, forces) => {
      const found = mustBe(pushTestOf(forces.map((force) => push(force, force / stiffness))));
      expect(found.stiffnessNPerMm / stiffness).toBeCloseTo(1, 12);
      expect(found.stiffnessUncertaintyNPerMm ?? 1).toBeLessThan(1e-12 * stiffness);
    }));
  });

  it('leaves the least sum of squares of all stiffnesses', () => {
    fc.assert(fc.property(fc.array(fc.tuple(within(50, 200), within(0.05, 0.5)), { minLength: 2, maxLength: 12 }), within(0.5, 2), (pairs, factor) => {
      const squaresAt = (stiffness: number): number => pairs.reduce((sum, [force, down]) => sum + (down - force / stiffness) ** 2, 0);
      const { stiffnessNPerMm } = mustBe(pushTestOf(pairs.map(([force, down]) => push(force, down))));
      expect(squaresAt(stiffnessNPerMm)).toBeLessThanOrEqual(squaresAt(factor * stiffnessNPerMm) + 1e-15);
    }));
  });

  it('claims no uncertainty from a single push, and refuses what no board does', () => {
    expect(pushTestOf([push(100, 0.2)])).toEqual({ ok: true, value: { stiffnessNPerMm: 500 } });
    expect(refused(pushTestOf([push(0, 0.1), push(0, 0)]))).toEqual(['range readings[0].forceN noLoad']);
    expect(refused(pushTestOf([push(100, -0.2)]))).toEqual(['unsolvable readings boardNotGiving']);
  });
});

describe('a list of influence', () => {
  it('gives back the matrix that made it, the mirrored half left out or not', () => {
    fc.assert(fc.property(board, fc.boolean(), (stiffness, both) => {
      const compliance = inverse(stiffness);
      const readings = compliance.to2DArray().flatMap((row, i) => row.flatMap((entry, j) => (both || j <= i ? [influence(i + 1, j + 1, 100, 100 * entry)] : [])));
      const found = mustBe(influenceOf(stiffness.rows, readings));
      found.stiffnessNPerMm.forEach((row, i) => { row.forEach((entry, j) => { expect(Math.abs(entry - stiffness.get(i, j))).toBeLessThan(1e-7); }); });
      expect(found.asymmetryPct).toBeLessThan(1e-9);
      expect(found.uncheckedPairs).toBe(both ? 0 : (stiffness.rows * (stiffness.rows - 1)) / 2);
      expect(ladenOf(found.stiffnessNPerMm.map(() => ({})), found.stiffnessNPerMm, 'k').ok).toBe(true);
    }));
  });

  it('averages a pair and says where it differs most', () => {
    const readings = [influence(1, 1, 100, 0.4), influence(2, 2, 100, 0.4), influence(1, 2, 100, 0.11), influence(2, 1, 100, 0.13)];
    const found = mustBe(influenceOf(2, readings));
    expect(found.asymmetryPct).toBeCloseTo(5, 10);
    expect(found.asymmetryStations).toEqual([1, 2]);
    expect(found.stiffnessNPerMm[0]?.[0]).toBeCloseTo(0.004 / (0.004 ** 2 - 0.0012 ** 2), 8);
    expect(found.stiffnessNPerMm[0]?.[1]).toBeCloseTo(-0.0012 / (0.004 ** 2 - 0.0012 ** 2), 8);
  });

  it.each([
    ['a pair nobody pushed', [influence(1, 1, 100, 0.4), influence(2, 2, 100, 0.4)], ['required readings influencePair']],
    ['a station nobody pushed by itself', [influence(1, 1, 100, 0.4), influence(1, 2, 100, 0.1)], ['required readings influencePair']],
    ['a station that is not there', [influence(1, 3, 100, 0.1)], ['range readings[0].readStation undefined']],
    ['a push without load', [influence(1, 1, 0, 0.4)], ['range readings[0].forceN noLoad']],
    ['a station that rises under its own load', [influence(1, 1, 100, 0.4), influence(2, 2, 100, -0.4), influence(1, 2, 100, 0.1)], ['unsolvable readings[1].deflectionMm boardNotGiving']],
    ['more give elsewhere than where it is pushed', [influence(1, 1, 100, 0.4), influence(2, 2, 100, 0.4), influence(1, 2, 100, 0.5)], ['unsolvable readings influenceIndefinite']],
  ])('refuses %s', (_, readings, expected) => {
    expect(refused(influenceOf(2, readings))).toEqual(expected);
  });
});

describe('a board', () => {
  const k = (...rows: readonly (readonly number[])[]) => rows.map((row) => row.map(newtonsPerMillimetre));
  const two = [{}, {}];

  it.each([
    ['rows of another length', two, k([400, 1], [1]), ['length k[1] boardSquare']],
    ['another size than its notes', two, k([400]), ['length k boardNotes']],
    ['two halves that differ', two, k([400, -100], [-90, 400]), ['range k[1][0] boardAsymmetric']],
    ['a push that gains energy', two, k([400, 401], [401, 400]), ['unsolvable k[1] boardIndefinite']],
    ['a negative spring', two, k([-400, 0], [0, 400]), ['unsolvable k[0] boardIndefinite']],
    ['a station it has not', [{ station: 1 }, { station: 3 }], k([400, 0], [0, 400]), ['range notes[1].station undefined']],
    ['a note without a station among others', [{ station: 1 }, {}], k([400]), ['required notes[1].station undefined']],
  ])('is refused with %s', (_, notes, matrix, expected) => {
    expect(refused(ladenOf(notes, matrix, 'k'))).toEqual(expected);
  });

  it('that is one spring has no stations', () => {
    expect(refused(ladenOf([{ station: 1 }], newtonsPerMillimetre(400), 'k'))).toEqual(['unknown notes[0].station undefined']);
  });

  it('names the first row by which it stops being one, wherever that is', () => {
    fc.assert(fc.property(fc.integer({ min: 1, max: 20 }), fc.nat(), (size, pick) => {
      const bad = pick % size;
      const matrix = Array.from({ length: size }, (_, i) => Array.from({ length: size }, (__, j) => newtonsPerMillimetre(i === j ? (i === bad ? 0.001 : 10) : Math.abs(i - j) === 1 ? -1 : 0)));
      const result = ladenOf(matrix.map(() => ({})), matrix, 'k');
      expect(refused(result)).toEqual(size === 1 ? 'accepted' : [`unsolvable k[${String(bad === 0 ? 1 : bad)}] boardIndefinite`]);
    }));
  });
});
