import type { Candidate } from './key-leads-candidates.ts';

/** Prices of a gram-millimetre the bound is taken at, to either side of the best price of the whole problem, each this much dearer than the one before. */
const PRICES = 18;
const PRICE_STEP = 1.12;
/** Steps by which the best price is found: each leaves two thirds of the line, so that what is left is about one step of the row. */
const PRICE_STEPS = 12;

/** What is left to be set: how many leads at most, from which candidate on, and the moment they must come to. */
export interface Rest {
  readonly from: number;
  readonly leads: number;
  readonly lowGMm: number;
  readonly highGMm: number;
}

/** What is known of every rest of a row of candidates. */
export interface LeadBounds {
  /** For each candidate the first of those that may stand behind it: every later one may as well. */
  readonly next: readonly number[];
  /** Least cost of a rest, at the least: no legal set is cheaper. `Infinity` when out of reach. */
  readonly leastCost: (rest: Rest) => number;
  /** Least and largest moment that a rest can come to, and the leads that do it. */
  readonly reach: (rest: Pick<Rest, 'from' | 'leads'>) => readonly [number, number];
  readonly extreme: (side: 'least' | 'most') => readonly number[];
  /** True where a lead may save more than it costs, so that a choice that meets the window may still become cheaper. */
  readonly mayGain: boolean;
}

/** Best sum of a weight over at most r spaced candidates from i on: `[r][i]`. */
type Table = readonly Float64Array[];

/**
 * Bounds on what any spaced choice of leads can do.
 * Spacing makes the candidates intervals on a line, of which each choice is a chain; the best chain of at most r of them by any
 * weight w is B(r, i) = min(B(r, i + 1), w_i + B(r − 1, next(i))). With w = moment it gives the reach, exactly. With
 * w = cost − λ·moment every set whose moment lies in [low, high] costs at least λ·low + B for λ ≥ 0, λ·high + B for λ < 0: the
 * largest over a row of prices λ is the bound. It knows spacing, old holes, sizes and the price of drilling; it is no more
 * than a bound because moments come in lumps.
 * @source BELLMAN-1957, EVERETT-1963
 */
export function leadBoundsOf(candidates: readonly Candidate[], maxLeads: number, [lowGMm, highGMm]: readonly [number, number]): LeadBounds {
  const reaching = leadReachOf(candidates, maxLeads);
  const { next, reach } = reaching;
  const table = (weight: (candidate: Candidate) => number): Table => chainTable(Float64Array.from(candidates, weight), next, maxLeads);
  const mayGain = candidates.some(({ costG }) => costG < 0);
  const whole = { from: 0, leads: maxLeads, lowGMm, highGMm };
  const priced = (price: number) => ({ price, table: table(({ costG, momentGMm }) => costG - price * momentGMm) });
  const rows = pricesFor(candidates, whole, (price) => valueAtPrice(priced(price), whole)).map(priced);
  return { ...reaching, mayGain, leastCost: leastCostOf(rows, reach, mayGain ? -Infinity : 0) };
}

/** The part of the bounds that knows moments alone: a hundredth of the work of the whole. */
export function leadReachOf(candidates: readonly Candidate[], maxLeads: number): Pick<LeadBounds, 'next' | 'reach' | 'extreme'> {
  const next = candidates.map(({ back }) => firstBehind(candidates, back));
  const least = chainTable(Float64Array.from(candidates, ({ momentGMm }) => momentGMm), next, maxLeads);
  const most = chainTable(Float64Array.from(candidates, ({ momentGMm }) => -momentGMm), next, maxLeads);
  return { next, reach: ({ from, leads }) => [valueAt(least, leads, from), -valueAt(most, leads, from)], extreme: (side) => chainOf(side === 'least' ? least : most, next, maxLeads) };
}

interface Priced {
  readonly price: number;
  readonly table: Table;
}

const valueAt = (table: Table, leads: number, from: number): number => table[leads]?.[from] ?? 0;

function valueAtPrice({ price, table }: Priced, { from, leads, lowGMm, highGMm }: Rest): number {
  return price * (price >= 0 ? lowGMm : highGMm) + valueAt(table, leads, from);
}

/** The bound is concave in the price: climbing from where the last question ended finds its top in a few steps. */
function leastCostOf(rows: readonly Priced[], reach: LeadBounds['reach'], floor: number): LeadBounds['leastCost'] {
  let at = rows.length >> 1;
  const value = (place: number, rest: Rest): number => {
    const row = rows[place];
    return row === undefined ? -Infinity : valueAtPrice(row, rest);
  };
  return (rest) => {
    const [least, most] = reach(rest);
    if (rest.lowGMm > most || rest.highGMm < least) return Infinity;
    let best = value(at, rest);
    for (const step of [1, -1]) {
      for (let tried = value(at + step, rest); tried > best; tried = value(at + step, rest)) {
        best = tried;
        at += step;
      }
    }
    return Math.max(best, floor);
  };
}

/** Prices about the one at which the bound of the whole problem is best, found by thirds on a logarithmic line; of both signs where moments are. */
function pricesFor(candidates: readonly Candidate[], { lowGMm, highGMm }: Rest, bound: (price: number) => number): readonly number[] {
  const sign = lowGMm > 0 || highGMm >= 0 ? 1 : -1;
  const ratios = candidates.flatMap(({ costG, momentGMm }) => (momentGMm === 0 ? [] : [Math.abs(costG / momentGMm)]));
  if (ratios.length === 0) return [0];
  let [low, high] = [Math.log(Math.max(Math.min(...ratios), 1e-9)) - 3, Math.log(Math.max(...ratios)) + 3];
  for (let step = 0; step < PRICE_STEPS; step += 1) {
    const [a, b] = [low + (high - low) / 3, high - (high - low) / 3];
    if (bound(sign * Math.exp(a)) < bound(sign * Math.exp(b))) low = a;
    else high = b;
  }
  const best = Math.exp((low + high) / 2);
  const row = Array.from({ length: 2 * PRICES + 1 }, (_, place) => best * PRICE_STEP ** (place - PRICES));
  const mixed = candidates.some(({ momentGMm }) => momentGMm < 0);
  return [...(mixed ? row.map((price) => -price).reverse() : []), 0, ...row];
}

function firstBehind(candidates: readonly Candidate[], back: number): number {
  let [low, high] = [0, candidates.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((candidates[middle]?.front ?? -Infinity) <= back) high = middle;
    else low = middle + 1;
  }
  return low;
}

function chainTable(weights: Float64Array, next: readonly number[], maxLeads: number): Table {
  const table = [new Float64Array(weights.length + 1)];
  for (let leads = 1; leads <= maxLeads; leads += 1) {
    const [fewer, row] = [table[leads - 1] ?? new Float64Array(0), new Float64Array(weights.length + 1)];
    for (let i = weights.length - 1; i >= 0; i -= 1) row[i] = Math.min(row[i + 1] ?? 0, (weights[i] ?? 0) + (fewer[next[i] ?? 0] ?? 0));
    table.push(row);
  }
  return table;
}

/** The chain whose weight a table tells, from its first row on. */
function chainOf(table: Table, next: readonly number[], maxLeads: number): readonly number[] {
  const chain: number[] = [];
  let [from, leads] = [0, maxLeads];
  while (leads > 0 && valueAt(table, leads, from) < 0) {
    if (valueAt(table, leads, from) === valueAt(table, leads, from + 1)) from += 1;
    else {
      chain.push(from);
      from = next[from] ?? next.length;
      leads -= 1;
    }
  }
  return chain;
}
