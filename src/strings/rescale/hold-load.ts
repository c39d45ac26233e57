import { costToGo, cheapestPath, type CostToGo } from './cost-to-go.ts';
import { type LoadBand, isWithin } from './load-band.ts';
import { PROVEN_GAP } from './problem.ts';
import { type Candidate, type Row, candidateOf, unariesOf } from './row.ts';

/** How far the search for a load has come. */
export interface Held {
  /** Best way within the band. */
  readonly best: Candidate | undefined;
  /** No way within the band costs less. */
  readonly lowerBound: number;
  /** N⁻¹, signed: what a newton less (or, below nought, more) of load is worth. */
  readonly multiplier: number;
  /** The edge of the band that the multiplier presses against. */
  readonly edgeN: number;
  /** 1 at the upper edge, −1 at the lower: known even where the multiplier is nought. */
  readonly side: 1 | -1;
  /** With the multiplier at which the bound stands. */
  readonly unaries: readonly Float64Array[];
  readonly toGo: CostToGo;
  /** The ways the multiplier was found between, in the band or not. */
  readonly ends: readonly Candidate[];
}

const MOST_ROUNDS = 60;

/**
 * The cheapest way through the rows whose load lies in a band, by a Lagrange multiplier on the load.
 * For any λ, min J + λ·(S − edge) bounds every way within the band from below, λ ≥ 0 at the upper edge, ≤ 0 at the lower.
 * λ is found where two ways, one either side of the edge, cost the same; each round is one exact programme. Ends when
 * bound and best way are close enough, or when no λ improves the bound: what is left then is a gap that whole strings make.
 * Yields after each note of each round. The band must be reachable. @source EVERETT-1963
 */
export function* holdLoad(rows: readonly Row[], band: LoadBand): Generator<Held | undefined, Held> {
  const free = yield* solved(rows, 0, 0, undefined);
  if (isWithin(band, free.candidate.loadN)) return heldOf(free, 1, free.candidate, free.candidate.objective);
  const edgeN = free.candidate.loadN > band.high ? band.high : band.low;
  const sign = free.candidate.loadN > band.high ? 1 : -1;
  const excess = (candidate: Candidate) => sign * (candidate.loadN - edgeN);
  let over = free.candidate;
  let under: Candidate | undefined;
  let multiplier = Math.max(over.objective, 1e-9) / Math.max(excess(over), 1e-9 * edgeN) / 4;
  let held = heldOf(free, sign, undefined, free.candidate.objective);
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const found: Solved = yield* solved(rows, sign * multiplier, edgeN, held);
    const bound = found.candidate.objective + multiplier * excess(found.candidate);
    const isSame = found.candidate.objective === over.objective || found.candidate.objective === under?.objective;
    if (excess(found.candidate) > 0) over = found.candidate;
    else under = found.candidate;
    const best = better(held.best, bestSplice(rows, band, over, under ?? over));
    held = bound >= held.lowerBound ? heldOf(found, sign, best, bound) : { ...held, best };
    held = { ...held, ends: under === undefined ? [over] : [under, over] };
    if (best !== undefined && isClose(best.objective, held.lowerBound)) break;
    if (under !== undefined && isSame) break;
    multiplier = under === undefined ? multiplier * 4 : (under.objective - over.objective) / (excess(over) - excess(under));
  }
  return held;
}

/** Whether an objective is proven by a bound. */
export const isClose = (objective: number, bound: number): boolean => objective - bound <= PROVEN_GAP * objective + 1e-12;

const better = (a: Candidate | undefined, b: Candidate | undefined): Candidate | undefined => (a === undefined || (b !== undefined && b.objective < a.objective) ? b : a);

interface Solved {
  readonly candidate: Candidate;
  readonly unaries: readonly Float64Array[];
  readonly toGo: CostToGo;
  readonly multiplier: number;
  readonly edgeN: number;
}

const heldOf = ({ candidate, unaries, toGo, multiplier, edgeN }: Solved, side: Held['side'], best: Candidate | undefined, lowerBound: number): Held => ({ best, lowerBound, multiplier, edgeN, side, unaries, toGo, ends: [candidate] });

function* solved(rows: readonly Row[], multiplier: number, edgeN: number, soFar: Held | undefined): Generator<Held | undefined, Solved> {
  const unaries = multiplier === 0 ? unariesOf(rows) : rows.map(({ unary, load }) => unary.map((cost, place) => cost + multiplier * (load[place] ?? 0)));
  const steps = costToGo(rows, unaries);
  let step = steps.next();
  while (step.done !== true) {
    yield soFar;
    step = steps.next();
  }
  return { candidate: candidateOf(rows, cheapestPath(rows, unaries, step.value)), unaries, toGo: step.value, multiplier, edgeN };
}

/** The best way within the band that follows one of two up to some note and the other from there. */
function bestSplice(rows: readonly Row[], band: LoadBand, a: Candidate, b: Candidate): Candidate | undefined {
  const joined = rows.flatMap((_, cut) => [[a, b], [b, a]].flatMap(([from, to]) => {
    if (from === undefined || to === undefined) return [];
    const candidate = candidateOf(rows, from.path.map((place, i) => (i < cut ? place : to.path[i] ?? 0)));
    return isWithin(band, candidate.loadN) ? [candidate] : [];
  }));
  return joined.reduce<Candidate | undefined>(better, undefined);
}
