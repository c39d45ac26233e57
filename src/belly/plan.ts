import { sumOf } from '#numerics';
import { type Degrees, type Millimetres, type Newtons, millimetres, newtons } from '#units';
import { type BearingNote, bearingOf } from './bearing.ts';
import { type BoardStiffness, solveBoard } from './board.ts';
import { bridgeHeightFor } from './recap.ts';
import { type Riding, carriedTo, spreadTo } from './stations.ts';

/** A note whose bridge height is to be found. */
export interface PlannedNote extends Omit<BearingNote, 'bridgeHeightMm'> {
  readonly targetTotalDeg: Degrees;
}

/** Heights that give each note its angle under load. Lists run as the notes do. */
export interface BearingPlan {
  /** Under the strings’ load. */
  readonly loadedHeightsMm: readonly Millimetres[];
  /** To be cut to, with the strings slack. */
  readonly unloadedHeightsMm: readonly Millimetres[];
  readonly settlingMm: readonly Millimetres[];
  readonly forcesN: readonly Newtons[];
  readonly totalForceN: Newtons;
}

/**
 * Bridge heights to cut to with the strings slack, so that the loaded board leaves each note the angle wanted: the loaded
 * height gives the force, the force the settling d = K⁻¹·Pᵀ·F, and the unloaded height is the loaded one plus d. Exact
 * without iteration, because the loaded geometry is the one wanted. Leaves out what {@link settledOf} leaves out.
 *
 * @throws Error when the board is not positive definite, which {@link ladenOf} refuses first.
 * @source VARIGNON-1687
 */
export function plannedHeightsOf(notes: readonly PlannedNote[], riding: readonly Riding[], board: BoardStiffness): BearingPlan {
  const loadedHeightsMm = notes.map((note) => bridgeHeightFor(note, note.targetTotalDeg));
  const forcesN = notes.map((note, index) => bearingOf({ ...note, bridgeHeightMm: loadedHeightsMm[index] ?? millimetres(0) }).forceN);
  const loads = new Float64Array(board.length);
  for (const [index, force] of forcesN.entries()) spreadTo(loads, riding[index] ?? [], force);
  const down = solveBoard(board, loads);
  if (down === undefined) throw new Error('the board is not positive definite');
  const settlingMm = notes.map((_, index) => millimetres(carriedTo(riding[index] ?? [], down)));
  return {
    loadedHeightsMm,
    unloadedHeightsMm: loadedHeightsMm.map((height, index) => millimetres(height + (settlingMm[index] ?? 0))),
    settlingMm,
    forcesN,
    totalForceN: newtons(sumOf(forcesN)),
  };
}
