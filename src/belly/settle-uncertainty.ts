import { sumOf } from '#numerics';
import { type Millimetres, type Newtons, millimetres, newtons } from '#units';
import { type BearingNote, bearingOf } from './bearing.ts';
import { type BearingDoubt, bearingUncertaintyOf } from './bearing-uncertainty.ts';
import { type BoardStiffness, solveBoard } from './board.ts';
import type { Settled } from './settle.ts';
import { type Riding, carriedTo, spreadTo } from './stations.ts';

/** How sure a settled board is; standard uncertainties (k = 1), lists as the notes run. */
export interface SettledUncertainty {
  readonly settlingUncertaintiesMm: readonly Millimetres[];
  readonly forceUncertaintiesN: readonly Newtons[];
  readonly totalForceUncertaintyN: Newtons;
}

interface SettledOn {
  readonly notes: readonly (BearingNote & BearingDoubt)[];
  readonly riding: readonly Riding[];
  readonly board: BoardStiffness;
  readonly settled: Settled;
  /** Standard uncertainty (k = 1) of the whole stiffness as a share of it; nought where left out. */
  readonly stiffnessShare?: number | undefined;
}

/**
 * What errors of heights, lengths and tension of each note, and of the stiffness, make of the settling and of the forces left.
 * Where a note by itself errs by u(F) in force, the board gives by δd = (K + Pᵀ·S·P)⁻¹·Pᵀ·u(F), with S the strings’ own
 * stiffness, and every note loses s·δd: a board softens what a height was misread by. A stiffness off as a whole by the
 * share c adds δd = −(K + Pᵀ·S·P)⁻¹·c·K·d. To first order; the notes are taken as independent.
 *
 * @returns `undefined` unless something is stated of every note, so that nothing is claimed.
 * @source JCGM-100 clause 5.1.2 with the implicit function theorem on the equilibrium of bearing-settle
 */
export function settledUncertaintyOf({ notes, riding, board, settled, stiffnessShare = 0 }: SettledOn): SettledUncertainty | undefined {
  const lowered = notes.map((note, index) => ({ ...note, bridgeHeightMm: millimetres(note.bridgeHeightMm - (settled.settlingMm[index] ?? 0)) }));
  const alone = lowered.map((note) => bearingUncertaintyOf(note, note)?.forceUncertaintyN);
  if (alone.some((each) => each === undefined)) return undefined;
  const stiffnesses = lowered.map((note) => bearingOf(note).stringStiffnessNPerMm);
  const together = stiffenedBy(board, riding, stiffnesses);
  const given = (load: Float64Array, own: (index: number) => number): Moved | undefined => {
    const down = solveBoard(together, load);
    if (down === undefined) return undefined;
    const settling = notes.map((_, index) => carriedTo(riding[index] ?? [], down));
    return { settling, forces: settling.map((depth, index) => own(index) - (stiffnesses[index] ?? 0) * depth) };
  };
  const moves = alone.map((error = newtons(0), place) => given(loadOf(board.length, riding[place] ?? [], error), (index) => (index === place ? error : 0)));
  const stiffer = given(Float64Array.from(board, (row) => -stiffnessShare * sumOf(row.map((entry, at) => entry * (settled.stationsMm[at] ?? 0)))), () => 0);
  const known = [...moves, stiffer].flatMap((move) => move ?? []);
  const across = (of: (move: Moved) => number): number => Math.sqrt(sumOf(known.map((move) => of(move) ** 2)));
  return {
    settlingUncertaintiesMm: notes.map((_, index) => millimetres(across(({ settling }) => settling[index] ?? 0))),
    forceUncertaintiesN: notes.map((_, index) => newtons(across(({ forces }) => forces[index] ?? 0))),
    totalForceUncertaintyN: newtons(across(({ forces }) => sumOf(forces))),
  };
}

/** What one error moves: how far each note goes down further, and what its force gains. */
interface Moved {
  readonly settling: readonly number[];
  readonly forces: readonly number[];
}

function loadOf(size: number, riding: Riding, forceN: number): Float64Array {
  const load = new Float64Array(size);
  spreadTo(load, riding, forceN);
  return load;
}

/** K + Pᵀ·S·P: board and strings together. */
function stiffenedBy(board: BoardStiffness, riding: readonly Riding[], stiffnesses: readonly number[]): readonly Float64Array[] {
  const together = board.map((row) => Float64Array.from(row));
  for (const [index, rides] of riding.entries()) {
    for (const { station, share } of rides) {
      const row = together[station];
      if (row !== undefined) spreadTo(row, rides, share * (stiffnesses[index] ?? 0));
    }
  }
  return together;
}
