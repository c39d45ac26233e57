import { carriedUncertaintiesOf } from '#numerics';
import { mustBe } from '#result';
import { degrees, millimetres, newtons, newtonsPerMillimetre } from '#units';
import fc from 'fast-check';
import { Matrix, solve } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { type BearingNote, bearingOf, ladenOf, plannedHeightsOf, settledOf, settledUncertaintyOf } from './index.ts';
import { anyNote, within } from './testing/notes.ts';

const spring = (stiffness: number) => [[newtonsPerMillimetre(stiffness)]];
const asOne = (notes: readonly BearingNote[]) => notes.map(() => [{ station: 0, share: 1 }]);
const branded = (matrix: Matrix) => matrix.to2DArray().map((row) => row.map(newtonsPerMillimetre));

/** A board of n stations: A·Aᵀ/n and a little of a spring at each, so always positive definite. */
const anyBoard = (n: number) => fc.array(within(-1, 1), { minLength: n * n, maxLength: n * n }).map((entries) => {
  const root = new Matrix(Array.from({ length: n }, (_, row) => entries.slice(row * n, row * n + n)));
  return root.mmul(root.transpose()).mul(300 / n).add(Matrix.eye(n).mul(30));
});
const laden = fc.integer({ min: 1, max: 6 }).chain((n) => fc.tuple(fc.array(anyNote(5), { minLength: n, maxLength: n }), anyBoard(n)));
const settledOn = (notes: readonly BearingNote[], board: Matrix) => settledOf(notes, notes.map((_, station) => [{ station, share: 1 }]), branded(board));

/** ½·dᵀ·K·d and the pull of the strings times their lengths: written out by Pythagoras, apart from the program. */
function energyOf(notes: readonly BearingNote[], board: Matrix, down: readonly number[]): number {
  const column = Matrix.columnVector([...down]);
  const strings = notes.map((note, index) => {
    const height = note.bridgeHeightMm - (down[index] ?? 0);
    const natural = Math.sqrt(note.speakingLengthMm ** 2 + (height - note.frontHeightMm) ** 2) - note.speakingLengthMm;
    return note.strings * note.tensionN * (natural + Math.sqrt(note.backLengthMm ** 2 + (height - note.rearHeightMm) ** 2) - note.backLengthMm);
  });
  return 0.5 * column.transpose().mmul(board).mmul(column).get(0, 0) + strings.reduce((sum, each) => sum + each, 0);
}

describe('a settling board', () => {
  it('carries exactly what the strings still bear', () => {
    fc.assert(fc.property(laden, ([notes, board]) => {
      const { settlingMm, forcesN } = settledOn(notes, board);
      const carried = board.mmul(Matrix.columnVector([...settlingMm])).to1DArray();
      const pull = notes.reduce((sum, note) => sum + note.strings * note.tensionN, 0);
      carried.forEach((force, index) => { expect(Math.abs(force - (forcesN[index] ?? Number.NaN))).toBeLessThan(1e-12 * pull); });
    }), { numRuns: 200 });
  });

  it('stands where no other place has less energy', () => {
    fc.assert(fc.property(laden, fc.array(within(-1, 1), { minLength: 6, maxLength: 6 }), within(1e-3, 30), ([notes, board], direction, far) => {
      const { settlingMm } = settledOn(notes, board);
      const away = settlingMm.map((down, index) => down + far * (direction[index] ?? 0));
      const here = energyOf(notes, board, settlingMm);
      expect(energyOf(notes, board, away)).toBeGreaterThanOrEqual(here - 1e-12 * (Math.abs(here) + notes.length * 1e5));
    }), { numRuns: 200 });
  });

  it('settles too where board and heights are far from any piano', () => {
    fc.assert(fc.property(fc.array(anyNote(9000), { minLength: 1, maxLength: 5 }), fc.constantFrom(1e-3, 1, 1e3, 1e9), (notes, stiffness) => {
      const { stationsMm: [down = Number.NaN], totalForceN } = settledOf(notes, asOne(notes), spring(stiffness));
      expect(Math.abs(stiffness * down - totalForceN)).toBeLessThan(1e-9 * Math.max(1, stiffness));
    }), { numRuns: 200 });
  });

  it('that is one spring goes down by the force over both stiffnesses, where angles are small', () => {
    fc.assert(fc.property(fc.array(anyNote(0.2), { minLength: 1, maxLength: 20 }), within(100, 5000), (notes, stiffness) => {
      const { stationsMm: [down = Number.NaN] } = settledOf(notes, asOne(notes), spring(stiffness));
      const force = notes.reduce((sum, note) => sum + bearingOf(note).forceN, 0);
      const strings = notes.reduce((sum, note) => sum + note.strings * note.tensionN * (1 / note.speakingLengthMm + 1 / note.backLengthMm), 0);
      const pull = notes.reduce((sum, note) => sum + note.strings * note.tensionN, 0);
      // What the linear answer leaves out is of third order in rises of up to 0.4 mm over 30 mm or more.
      expect(Math.abs(down - force / (stiffness + strings))).toBeLessThan((pull * 2 * (0.4 / 30) ** 3) / (stiffness + strings));
    }));
  });

  it('of many stations agrees with a general library, where angles are small', () => {
    fc.assert(fc.property(laden, ([steep, board]) => {
      const notes = steep.map((note) => ({ ...note, frontHeightMm: millimetres(note.frontHeightMm / 1e4), bridgeHeightMm: millimetres(note.bridgeHeightMm / 1e4), rearHeightMm: millimetres(note.rearHeightMm / 1e4) }));
      const own = Matrix.diag(notes.map((note) => note.strings * note.tensionN * (1 / note.speakingLengthMm + 1 / note.backLengthMm)));
      const expected = solve(Matrix.add(board, own), Matrix.columnVector(notes.map((note) => bearingOf(note).forceN))).to1DArray();
      const { settlingMm } = settledOn(notes, board);
      expected.forEach((down, index) => { expect(Math.abs(down - (settlingMm[index] ?? Number.NaN))).toBeLessThan(1e-10); });
    }));
  });

  it('goes down less the stiffer it is', () => {
    fc.assert(fc.property(anyNote(5), within(10, 1000), within(1.01, 10), (note, stiffness, more) => {
      const [soft = 0, stiff = 0] = [stiffness, more * stiffness].map((each) => Math.abs(settledOf([note], asOne([note]), spring(each)).stationsMm[0] ?? 0));
      expect(stiff).toBeLessThanOrEqual(soft);
    }));
  });

  it('between stations moves and bears in proportion, and loses no load', () => {
    const [one, two, three] = fc.sample(anyNote(3), { numRuns: 3, seed: 7 });
    if (one === undefined || two === undefined || three === undefined) return expect.fail();
    const matrix = [[newtonsPerMillimetre(400), newtonsPerMillimetre(-150)], [newtonsPerMillimetre(-150), newtonsPerMillimetre(380)]];
    const { board, riding } = mustBe(ladenOf([{ station: 1 }, { station: 1.25 }, { station: 2 }], matrix, 'stiffnessNPerMm'));
    const { settlingMm, stationsMm, forcesN, totalForceN } = settledOf([one, two, three], riding, board);
    expect(settlingMm[1]).toBeCloseTo(0.75 * (stationsMm[0] ?? 0) + 0.25 * (stationsMm[1] ?? 0), 12);
    expect(400 * (stationsMm[0] ?? 0) - 150 * (stationsMm[1] ?? 0)).toBeCloseTo((forcesN[0] ?? 0) + 0.75 * (forcesN[1] ?? 0), 8);
    expect(250 * (stationsMm[0] ?? 0) + 230 * (stationsMm[1] ?? 0)).toBeCloseTo(totalForceN, 8);
  });
});

describe('a plan of bridge heights', () => {
  it('settles to the angles it was made for', () => {
    fc.assert(fc.property(laden, within(-1, 3), ([notes, board], first) => {
      const wanted = notes.map((note, index) => ({ ...note, targetTotalDeg: degrees(first + 0.1 * index) }));
      const riding = notes.map((_, station) => [{ station, share: 1 }]);
      const { unloadedHeightsMm, totalForceN } = plannedHeightsOf(wanted, riding, branded(board));
      const settled = settledOf(notes.map((note, index) => ({ ...note, bridgeHeightMm: unloadedHeightsMm[index] ?? note.bridgeHeightMm })), riding, branded(board));
      settled.totalsDeg.forEach((total, index) => { expect(total).toBeCloseTo(first + 0.1 * index, 8); });
      expect(settled.totalForceN).toBeCloseTo(totalForceN, 6);
    }), { numRuns: 200 });
  });
});

describe('how sure a settled board is', () => {
  const doubt = { heightUncertaintyMm: millimetres(1e-3), backLengthUncertaintyMm: millimetres(1e-2), tensionUncertaintyN: newtons(0.1) };
  const unsure = (notes: readonly BearingNote[]) => notes.map((note) => ({ ...note, ...doubt }));

  it('is what central differences through the whole equilibrium give', () => {
    fc.assert(fc.property(laden, ([notes, board]) => {
      const riding = notes.map((_, station) => [{ station, share: 1 }]);
      const settled = settledOn(notes, board);
      const found = settledUncertaintyOf({ notes: unsure(notes), riding, board: branded(board), settled });
      const sizes = notes.flatMap((note) => [note.frontHeightMm, note.bridgeHeightMm, note.rearHeightMm, note.backLengthMm, note.tensionN]);
      const errors = notes.flatMap(() => [1e-3, 1e-3, 1e-3, 1e-2, 0.1]);
      const through = carriedUncertaintiesOf((given) => {
        const moved = notes.map((note, index) => {
          const [front = 0, bridge = 0, rear = 0, back = 0, tension = 0] = given.slice(5 * index, 5 * index + 5);
          return { ...note, frontHeightMm: millimetres(front), bridgeHeightMm: millimetres(bridge), rearHeightMm: millimetres(rear), backLengthMm: millimetres(back), tensionN: newtons(tension) };
        });
        const { settlingMm, forcesN, totalForceN } = settledOn(moved, board);
        return [...settlingMm, ...forcesN, totalForceN];
      }, sizes, errors);
      const ours = [...(found?.settlingUncertaintiesMm ?? []), ...(found?.forceUncertaintiesN ?? []), found?.totalForceUncertaintyN ?? Number.NaN];
      ours.forEach((value, index) => { expect(Math.abs(value - (through[index] ?? Number.NaN))).toBeLessThan(1e-4 * value + 1e-9); });
    }), { numRuns: 60 });
  });

  it('counts the stiffness of a spring: on a soft board its doubt moves the settling, and what is stated of no note claims nothing', () => {
    fc.assert(fc.property(fc.array(anyNote(3), { minLength: 1, maxLength: 5 }), within(200, 2000), (notes, stiffness) => {
      const exact = { notes: unsure(notes).map((note) => ({ ...note, heightUncertaintyMm: millimetres(0), backLengthUncertaintyMm: millimetres(0), tensionUncertaintyN: newtons(0) })), riding: asOne(notes), board: spring(stiffness), settled: settledOf(notes, asOne(notes), spring(stiffness)) };
      const [found] = settledUncertaintyOf({ ...exact, stiffnessShare: 1e-4 })?.settlingUncertaintiesMm ?? [];
      const [above, below] = [1 + 1e-4, 1 - 1e-4].map((share) => settledOf(notes, asOne(notes), spring(stiffness * share)).stationsMm[0] ?? Number.NaN);
      const through = Math.abs((above ?? Number.NaN) - (below ?? Number.NaN)) / 2;
      expect(Math.abs((found ?? Number.NaN) - through)).toBeLessThan(1e-3 * through + 1e-10);
      expect(settledUncertaintyOf({ ...exact, notes })).toBeUndefined();
    }), { numRuns: 60 });
  });
});
