import type { LeadBounds, Rest } from './key-leads-bound.ts';
import type { Candidate } from './key-leads-candidates.ts';

/** A choice of candidates by their places, and what the search has shown. */
export interface Found {
  readonly places: readonly number[];
  readonly costG: number;
  /** False when the search stopped at its limit: then a cheaper choice may exist. */
  readonly complete: boolean;
}

/** Costs closer than this are the same: far below what a scale or a drill can tell, far above rounding. */
const SAME_G = 1e-9;

/**
 * Cheapest spaced choice whose moment lies in a window, by depth-first branch and bound.
 * A branch is the next lead toward the back; branches are taken by their bound, cheapest first, and left once the bound is no
 * lower than the best so far. A choice that meets the window is closed where a further lead can only cost. The last lead is
 * looked up by its moment, not searched for. Ties are told apart by cost alone.
 * @source LAND-DOIG-1960
 */
export function cheapestLeads(candidates: readonly Candidate[], bounds: LeadBounds, whole: Rest, nodeLimit: number): Found | { readonly places: undefined; readonly complete: boolean } {
  const byMoment = momentIndexOf(candidates);
  let [best, places, nodes] = [Infinity, undefined as readonly number[] | undefined, 0];
  const keep = (cost: number, chosen: readonly number[]): void => {
    if (cost >= best - SAME_G) return;
    best = cost;
    places = chosen;
  };
  const search = (rest: Rest, cost: number, chosen: readonly number[]): void => {
    const met = rest.lowGMm <= 0 && rest.highGMm >= 0;
    if (met) keep(cost, chosen);
    if (met && !bounds.mayGain) return;
    if (rest.leads === 1) {
      const last = byMoment(rest, best - SAME_G - cost);
      if (last !== undefined) keep(cost + (candidates[last]?.costG ?? 0), [...chosen, last]);
    } else if (rest.leads > 1) branch(rest, cost, chosen);
  };
  const branch = (rest: Rest, cost: number, chosen: readonly number[]): void => {
    for (const { place, bound, under, spent } of branchesOf(candidates, bounds, rest, cost, best - SAME_G)) {
      if (bound >= best - SAME_G) return;
      nodes += 1;
      if (nodes > nodeLimit) return;
      search(under, spent, [...chosen, place]);
    }
  };
  if (bounds.leastCost(whole) < Infinity) search(whole, 0, []);
  const complete = nodes <= nodeLimit;
  return places === undefined ? { places, complete } : { places, costG: best, complete };
}

interface Branch {
  readonly place: number;
  readonly under: Rest;
  readonly spent: number;
  readonly bound: number;
}

/** Each candidate as the next lead, with the bound of what follows; those that cannot beat `best` left out. */
function branchesOf(candidates: readonly Candidate[], { next, leastCost, mayGain }: LeadBounds, rest: Rest, cost: number, best: number): readonly Branch[] {
  const branches: Branch[] = [];
  for (let place = rest.from; place < candidates.length; place += 1) {
    const candidate = candidates[place];
    if (candidate === undefined) break;
    if ((place - rest.from) % 8 === 0 && cost + leastCost({ ...rest, from: place }) >= best) break;
    const { momentGMm, costG } = candidate;
    const under = { from: next[place] ?? candidates.length, leads: rest.leads - 1, lowGMm: rest.lowGMm - momentGMm, highGMm: rest.highGMm - momentGMm };
    const met = under.lowGMm <= 0 && under.highGMm >= 0;
    const bound = cost + costG + (met && !mayGain ? 0 : leastCost(under));
    if (bound < best) branches.push({ place, under, spent: cost + costG, bound });
  }
  return branches.sort((a, b) => a.bound - b.bound);
}

/** Finds the cheapest single candidate of a rest whose moment lies in the window, below a cost. */
function momentIndexOf(candidates: readonly Candidate[]): (rest: Rest, below: number) => number | undefined {
  const order = candidates.map((_, place) => place).sort((a, b) => (candidates[a]?.momentGMm ?? 0) - (candidates[b]?.momentGMm ?? 0));
  const moments = Float64Array.from(order, (place) => candidates[place]?.momentGMm ?? 0);
  return ({ from, lowGMm, highGMm }, below) => {
    let [best, found] = [below, undefined as number | undefined];
    for (let at = firstAtLeast(moments, lowGMm); at < moments.length && (moments[at] ?? Infinity) <= highGMm; at += 1) {
      const place = order[at] ?? 0;
      const cost = candidates[place]?.costG ?? Infinity;
      if (place >= from && cost < best) [best, found] = [cost, place];
    }
    return found;
  };
}

function firstAtLeast(sorted: Float64Array, value: number): number {
  let [low, high] = [0, sorted.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((sorted[middle] ?? Infinity) >= value) high = middle;
    else low = middle + 1;
  }
  return low;
}
