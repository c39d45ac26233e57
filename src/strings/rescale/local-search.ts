import { type LoadBand, isWithin } from './load-band.ts';
import { type Candidate, type Path, type Row, candidateOf, stepCost, unariesOf } from './row.ts';

const MOST_MOVES = 400;

/**
 * A way within the band near a given one: note by note the change that brings the load nearer at the least cost a
 * newton, then every change of one note that lowers the objective and stays in the band. No proof, only a good start.
 *
 * @returns `undefined` where no such change leads into the band.
 * @source OWN
 */
export function intoBand(rows: readonly Row[], band: LoadBand, from: Candidate): Candidate | undefined {
  const unaries = unariesOf(rows);
  let here = from;
  for (let move = 0; move < MOST_MOVES; move += 1) {
    const inside = isWithin(band, here.loadN);
    const better = bestMove(rows, unaries, band, here, inside);
    if (better === undefined) return inside ? here : undefined;
    here = better;
  }
  return isWithin(band, here.loadN) ? here : undefined;
}

function bestMove(rows: readonly Row[], unaries: readonly Float64Array[], band: LoadBand, here: Candidate, inside: boolean): Candidate | undefined {
  const off = (loadN: number) => Math.max(band.low - loadN, loadN - band.high, 0);
  let [best, row, place] = [inside ? -1e-12 : Infinity, 0, 0];
  for (let i = 1; i < rows.length; i += 1) {
    const loads = rows[i]?.load ?? new Float64Array(0);
    for (let m = 0; m < loads.length; m += 1) {
      if (m === here.path[i]) continue;
      const gain = off(here.loadN) - off(here.loadN + (loads[m] ?? 0) - (loads[here.path[i] ?? 0] ?? 0));
      if (inside ? gain < 0 : gain <= 0) continue;
      const change = changeOf(rows, unaries, here.path, i, m) / (inside ? 1 : gain);
      if (change < best) [best, row, place] = [change, i, m];
    }
  }
  return row === 0 ? undefined : candidateOf(rows, here.path.map((was, i) => (i === row ? place : was)));
}

/** What the objective changes by when one note takes another place. @source OWN */
export function changeOf(rows: readonly Row[], unaries: readonly Float64Array[], path: Path, row: number, place: number): number {
  const at = (i: number, moved: boolean): number => (moved && i === row ? place : path[i] ?? 0);
  let change = 0;
  for (let i = row; i <= Math.min(row + 2, rows.length - 1); i += 1) {
    change += stepCost(rows, unaries, i, at(i - 2, true), at(i - 1, true), at(i, true)) - stepCost(rows, unaries, i, at(i - 2, false), at(i - 1, false), at(i, false));
  }
  return change;
}
