import { type Degrees, type Millimetres, type Newtons, millimetres, newtons } from '#units';
import { sumOf } from '#numerics';
import { type BearingNote, bearingOf } from './bearing.ts';
import { type BoardStiffness, solveBoard } from './board.ts';
import { type Riding, carriedTo, spreadTo } from './stations.ts';

/** A board under its strings. Lists run as the notes do. */
export interface Settled {
  /** How far each note’s bridge goes down. */
  readonly settlingMm: readonly Millimetres[];
  /** The same at the stations of the board. */
  readonly stationsMm: readonly Millimetres[];
  readonly totalsDeg: readonly Degrees[];
  readonly forcesN: readonly Newtons[];
  readonly totalForceN: Newtons;
}

/** A step below this, in millimetres and against the settling, is the last one: Newton’s next would be its square. */
const LAST_STEP = 1e-9;
/** Halvings and steps that no convex problem of this kind comes near. */
const MOST_STEPS = 500;

/**
 * How far the board goes down until it carries what the strings still bear: K·d = Pᵀ·F(h − P·d), where P shares a note
 * out over the stations it stands between. To first order d = F₀/(k + G), G = Σ n·T·(1/L + 1/L_r): the strings’ own
 * stiffness is not small against the board’s.
 *
 * The equilibrium is where the energy ½·dᵀ·K·d + Σ n·T·[√(L² + (h_b − h_f − d)²) + √(L_r² + (h_b − h_r − d)²)] is least.
 * Each string length is convex in d and K is positive definite, so the energy is strictly convex and grows without bound:
 * there is one equilibrium and no other. Newton’s method on it, its step halved while it overshoots, cannot miss it.
 *
 * Tension is kept: strings brought back to pitch have it again whatever the board did. Left out: what settling takes from
 * the tension before they are retuned, creep and moisture, and that a board loses stiffness with its crown.
 *
 * @throws Error when it does not settle, which a positive definite board rules out.
 * @source BOYD-VANDENBERGHE section 9.5
 */
export function settledOf(notes: readonly BearingNote[], riding: readonly Riding[], board: BoardStiffness): Settled {
  let down = new Float64Array(board.length);
  for (let count = 0; count < MOST_STEPS; count += 1) {
    const { surplus, stiffness } = balanceAt(notes, riding, board, down);
    const step = solveBoard(stiffness, surplus);
    if (step === undefined) break;
    const share = stepShareOf(step, surplus, (next) => balanceAt(notes, riding, board, next).surplus, down);
    down = moved(down, step, share);
    if (share === 1 && largest(step) <= LAST_STEP * (1 + largest(down))) return settledAt(notes, riding, down);
  }
  throw new Error(`the board did not settle in ${String(MOST_STEPS)} steps`);
}

/** What the strings bear beyond what the board carries, at each station, and the stiffness of both together. */
function balanceAt(notes: readonly BearingNote[], riding: readonly Riding[], board: BoardStiffness, down: Float64Array): { readonly surplus: Float64Array; readonly stiffness: readonly Float64Array[] } {
  const surplus = Float64Array.from(board, (row) => -sumOf(row.map((entry, station) => entry * (down[station] ?? 0))));
  const stiffness = board.map((row) => Float64Array.from(row));
  for (const [index, note] of notes.entries()) {
    const rides = riding[index] ?? [];
    const { forceN, stringStiffnessNPerMm } = bearingOf(loweredBy(note, carriedTo(rides, down)));
    spreadTo(surplus, rides, forceN);
    for (const { station, share } of rides) {
      const row = stiffness[station];
      if (row !== undefined) spreadTo(row, rides, share * stringStiffnessNPerMm);
    }
  }
  return { surplus, stiffness };
}

/** The largest of 1, ½, ¼ … at which the energy along the step has not turned to rise at more than half its first fall. */
function stepShareOf(step: Float64Array, surplus: Float64Array, surplusAt: (down: Float64Array) => Float64Array, down: Float64Array): number {
  const fall = dot(step, surplus);
  let share = 1;
  while (share > Number.EPSILON && -dot(step, surplusAt(moved(down, step, share))) > fall / 2 && largest(step) * share > LAST_STEP) share /= 2;
  return share;
}

function settledAt(notes: readonly BearingNote[], riding: readonly Riding[], down: Float64Array): Settled {
  const settlingMm = notes.map((_, index) => millimetres(carriedTo(riding[index] ?? [], down)));
  const bearings = notes.map((note, index) => bearingOf(loweredBy(note, settlingMm[index] ?? 0)));
  const forcesN = bearings.map(({ forceN }) => forceN);
  return {
    settlingMm,
    stationsMm: Array.from(down, millimetres),
    totalsDeg: bearings.map(({ totalDeg }) => totalDeg),
    forcesN,
    totalForceN: newtons(sumOf(forcesN)),
  };
}

const loweredBy = (note: BearingNote, down: number): BearingNote => ({ ...note, bridgeHeightMm: millimetres(note.bridgeHeightMm - down) });
const moved = (from: Float64Array, step: Float64Array, share: number): Float64Array<ArrayBuffer> => Float64Array.from(from, (value, index) => value + share * (step[index] ?? 0));
const dot = (a: Float64Array, b: Float64Array): number => sumOf(Array.from(a, (value, index) => value * (b[index] ?? 0)));
const largest = (values: Float64Array): number => values.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
