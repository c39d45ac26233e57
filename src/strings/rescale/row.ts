import { sizeNumbers } from './candidate-figures.ts';
import { boxOrder } from './box-order.ts';
import type { CandidateFigures, RescaleNote, RescaleWeights } from './problem.ts';

/** One note as the search sees it: a column a figure, like beside like; see `rowsOf`. */
export interface Row {
  readonly count: number;
  /** Places in the note's list of candidates. */
  readonly candidates: readonly number[];
  /** ln T, ln B, ln N·Z. */
  readonly features: readonly [Float64Array, Float64Array, Float64Array];
  /** Tension of the whole unison, N. */
  readonly load: Float64Array;
  /** tensionDeviation·(ln T − ln T_target)². */
  readonly unary: Float64Array;
  /** See `sizeNumbers`. */
  readonly sizes: Int32Array;
  /** Of the second differences of the features that end at this note. */
  readonly weights: readonly [number, number, number];
  readonly sizeWeight: number;
}

/** Places of a row that are looked at together; they lie close together in tension and inharmonicity. */
export const BLOCK = 8;

/** A note with the figures of its candidates and those of them that may be chosen. */
export interface OpenNote {
  readonly note: RescaleNote;
  readonly figures: readonly CandidateFigures[];
  readonly open: readonly number[];
}

/** A note before the first, with one way to be: it takes the first note's neighbour away from the search. */
const BEFORE: Row = {
  count: 1, candidates: [0], features: [new Float64Array(1), new Float64Array(1), new Float64Array(1)],
  load: new Float64Array(1), unary: new Float64Array(1), sizes: Int32Array.of(0), weights: [0, 0, 0], sizeWeight: 0,
};

/**
 * The notes as columns of numbers, behind a row that stands for nothing, so that every note has one below it.
 * @source OWN
 */
export function rowsOf(notes: readonly OpenNote[], weights: RescaleWeights): readonly Row[] {
  const sizeOf = sizeNumbers();
  return [BEFORE, ...notes.map((open, place) => rowOf(open, { ...weights, ...open.note.weights }, place, sizeOf))];
}

function rowOf({ note, figures, open }: OpenNote, weights: RescaleWeights, place: number, sizeOf: ReturnType<typeof sizeNumbers>): Row {
  const strings = note.strings ?? 3;
  const unsorted = open.flatMap((index) => {
    const found = figures[index];
    const candidate = note.candidates[index];
    return found === undefined || candidate === undefined ? [] : [{ index, ...found, size: sizeOf(candidate) }];
  });
  const order = boxOrder([Float64Array.from(unsorted, ({ tensionN }) => Math.log(tensionN)), Float64Array.from(unsorted, ({ inharmonicityB }) => Math.log(inharmonicityB))], [1, 1], BLOCK);
  const listed = order.flatMap((at) => unsorted[at] ?? []);
  const column = (value: (entry: (typeof listed)[number]) => number) => Float64Array.from(listed, value);
  const smooth = (weight: number | undefined) => (place < 2 ? 0 : weight ?? 0);
  return {
    count: listed.length,
    candidates: listed.map(({ index }) => index),
    features: [column(({ tensionN }) => Math.log(tensionN)), column(({ inharmonicityB }) => Math.log(inharmonicityB)), column(({ impedanceKgPerS }) => Math.log(strings * impedanceKgPerS))],
    load: column(({ tensionN }) => strings * tensionN),
    unary: column(({ tensionN }) => deviationOf(tensionN, note.targetTensionN, weights.tensionDeviation)),
    sizes: Int32Array.from(listed, ({ size }) => size),
    weights: [smooth(weights.tensionSmoothness), smooth(weights.inharmonicitySmoothness), smooth(weights.impedanceSmoothness)],
    sizeWeight: place < 1 ? 0 : weights.sizeChange ?? 0,
  };
}

const deviationOf = (tensionN: number, targetN: number | undefined, weight = 0): number => (targetN === undefined ? 0 : weight * Math.log(tensionN / targetN) ** 2);

/** What it costs that a note has another size than the one below; a change between plain and wound is none. */
export function changeCost({ sizeWeight }: Row, below: number, here: number): number {
  return below !== here && ((below ^ here) & 1) === 0 ? sizeWeight : 0;
}

/** A way through the rows: a place in each, 0 in the first. */
export type Path = Int32Array;

/** The objective of a way through the rows; see `rescaleSteps` for the formula. @source OWN */
export function objectiveOf(rows: readonly Row[], path: Path): number {
  let sum = 0;
  const unaries = unariesOf(rows);
  for (let i = 1; i < rows.length; i += 1) sum += stepCost(rows, unaries, i, path[i - 2] ?? 0, path[i - 1] ?? 0, path[i] ?? 0);
  return sum;
}

/** The rows' own costs of a place by itself. */
export const unariesOf = (rows: readonly Row[]): readonly Float64Array[] => rows.map(({ unary }) => unary);

/** Cost of the terms that end at row i: the place by itself, change of size and the second differences over three notes. @source OWN */
export function stepCost(rows: readonly Row[], unaries: readonly Float64Array[], i: number, two: number, one: number, here: number): number {
  const [row, below, lower] = [rows[i], rows[i - 1], rows[i - 2]];
  const unary = unaries[i];
  if (row === undefined || below === undefined || unary === undefined) return 0;
  let sum = at(unary, here) + changeCost(row, at(below.sizes, one), at(row.sizes, here));
  if (lower === undefined) return sum;
  for (let f = 0; f < 3; f += 1) {
    const weight = row.weights[f] ?? 0;
    if (weight > 0) sum += weight * (at(column(row, f), here) - 2 * at(column(below, f), one) + at(column(lower, f), two)) ** 2;
  }
  return sum;
}

const at = (values: ArrayLike<number>, index: number): number => values[index] ?? Number.NaN;
const column = (row: Row, f: number): Float64Array => row.features[f] ?? row.features[0];

/** The load of a way through the rows, N. */
export function loadOf(rows: readonly Row[], path: Path): number {
  return rows.reduce((sum, row, i) => sum + (i === 0 ? 0 : at(row.load, path[i] ?? 0)), 0);
}

/** A way through the rows and what it comes to. */
export interface Candidate {
  readonly path: Path;
  readonly objective: number;
  readonly loadN: number;
}

/** A way with its objective and load. */
export const candidateOf = (rows: readonly Row[], path: Path): Candidate => ({ path, objective: objectiveOf(rows, path), loadN: loadOf(rows, path) });
