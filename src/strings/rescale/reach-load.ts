import type { LoadBand } from './load-band.ts';
import { TOTAL_TOLERANCE } from './problem.ts';
import { type Candidate, type Row, candidateOf, stepCost, unariesOf } from './row.ts';

/** How finely loads are told apart, as a share of the total: a tenth of the half width of the band that is held. */
const STEP = TOTAL_TOLERANCE / 10;

interface Reached {
  readonly place: number;
  readonly below: Reached | undefined;
  readonly loadN: number;
  readonly cost: number;
}

/**
 * A way whose load comes as near to the band as can be found: all loads that can be reached, row by row, one way kept for
 * each small step of load, the cheaper of two. For a handful of notes no load is missed by more than the steps. @source BELLMAN-1957
 */
export function reachLoad(rows: readonly Row[], band: LoadBand): Candidate | undefined {
  const width = band.high * STEP;
  const unaries = unariesOf(rows);
  let reached: readonly Reached[] = [{ place: 0, below: undefined, loadN: 0, cost: 0 }];
  for (let i = 1; i < rows.length; i += 1) {
    const next = new Map<number, Reached>();
    for (const below of reached) {
      for (const [place, load] of (rows[i]?.load ?? new Float64Array(0)).entries()) {
        const loadN = below.loadN + load;
        const cost = below.cost + stepCost(rows, unaries, i, below.below?.place ?? 0, below.place, place);
        const step = Math.round(loadN / width);
        if (cost < (next.get(step)?.cost ?? Infinity)) next.set(step, { place, below, loadN, cost });
      }
    }
    reached = [...next.values()];
  }
  const off = ({ loadN }: Reached): number => Math.max(band.low - loadN, loadN - band.high, 0);
  const nearest = reached.reduce<Reached | undefined>((a, b) => (a === undefined || off(b) < off(a) || (off(b) === off(a) && b.cost < a.cost) ? b : a), undefined);
  return nearest === undefined ? undefined : candidateOf(rows, Int32Array.from(placesOf(nearest)));
}

function placesOf(last: Reached): readonly number[] {
  const places: number[] = [];
  for (let here: Reached | undefined = last; here !== undefined; here = here.below) places.unshift(here.place);
  return places;
}
