import type { KeyNumber } from '#instrument';
import { medianOf } from '#numerics';

/** A figure at a key, to be compared with its neighbours. */
export interface KeyValue {
  readonly key: KeyNumber;
  readonly value: number;
}

/** What a key's neighbours lead one to expect of it, and how far they scatter. */
export interface Expected {
  readonly value: number;
  /** Scaled median absolute deviation of the neighbours from their own line, never less than is usual on this keyboard. */
  readonly scatter: number;
  readonly neighbours: number;
}

/** Neighbours a key is compared with, and the fewest that say anything. @source OWN */
const NEIGHBOURS = 12;
const FEWEST = 5;
/** Makes a median absolute deviation an estimate of a normal standard deviation: 1 / Φ⁻¹(3/4). */
const NORMAL_CONSISTENCY = 1.482602218505602;

type Fit = (neighbours: readonly KeyValue[], key: KeyNumber) => { readonly value: number; readonly scatter: number };

/**
 * What each key's neighbours lead one to expect: a Theil–Sen line through the 12 nearest keys of the list, the key itself left out.
 * slope = median of all (yⱼ − yᵢ)/(xⱼ − xᵢ); level = median of y − slope·x. Give one colour at a time where the colours differ.
 * Takes up to 29 % of faulty neighbours without moving far. Fewer than 5 neighbours: the key is absent from the answer.
 * @source SEN-1968
 */
export function expectedByLine(list: readonly KeyValue[]): ReadonlyMap<KeyNumber, Expected> {
  return expectedBy(list, lineAt);
}

/** The same with the plain median of the 12 nearest, for figures that do not run along the keyboard, such as the ratio. @source OWN */
export function expectedByMedian(list: readonly KeyValue[]): ReadonlyMap<KeyNumber, Expected> {
  return expectedBy(list, medianAt);
}

function expectedBy(list: readonly KeyValue[], fit: Fit): ReadonlyMap<KeyNumber, Expected> {
  if (list.length <= FEWEST) return new Map();
  const sorted = [...list].sort((a, b) => a.key - b.key);
  const fits = sorted.map(({ key }, index) => ({ key, ...fit(nearest(sorted, index), key) }));
  const usual = medianOf(fits.map(({ scatter }) => scatter));
  const neighbours = Math.min(NEIGHBOURS, sorted.length - 1);
  return new Map(fits.map(({ key, value, scatter }) => [key, { value, scatter: Math.max(scatter, usual), neighbours }]));
}

/** The 12 nearest in a sorted list, itself left out; of two equally near the lower key. */
function nearest(sorted: readonly KeyValue[], index: number): readonly KeyValue[] {
  const here = sorted[index]?.key ?? 0;
  let low = index;
  let high = index;
  while (high - low < NEIGHBOURS && (low > 0 || high < sorted.length - 1)) {
    const below = sorted[low - 1];
    const above = sorted[high + 1];
    if (above === undefined || (below !== undefined && here - below.key <= above.key - here)) low -= 1;
    else high += 1;
  }
  return [...sorted.slice(low, index), ...sorted.slice(index + 1, high + 1)];
}

function lineAt(neighbours: readonly KeyValue[], key: KeyNumber): { readonly value: number; readonly scatter: number } {
  const count = neighbours.length;
  const slopes = new Float64Array((count * (count - 1)) / 2);
  let next = 0;
  for (let i = 0; i < count; i += 1) {
    for (let j = i + 1; j < count; j += 1) slopes[next++] = slopeBetween(neighbours[i], neighbours[j]);
  }
  const slope = middleOf(slopes);
  const fromKey = Float64Array.from(neighbours, (point) => point.value - slope * (point.key - key));
  return levelOf(fromKey);
}

function medianAt(neighbours: readonly KeyValue[]): { readonly value: number; readonly scatter: number } {
  return levelOf(Float64Array.from(neighbours, ({ value }) => value));
}

function levelOf(values: Float64Array): { readonly value: number; readonly scatter: number } {
  const value = middleOf(values);
  return { value, scatter: NORMAL_CONSISTENCY * middleOf(values.map((each) => Math.abs(each - value))) };
}

function slopeBetween(a: KeyValue | undefined, b: KeyValue | undefined): number {
  return a === undefined || b === undefined ? 0 : (b.value - a.value) / (b.key - a.key);
}

/** Median of a typed array, which it sorts in place: several times faster than a list with a comparison, and this runs at each keystroke. */
function middleOf(values: Float64Array): number {
  values.sort();
  const middle = values.length >> 1;
  const upper = values[middle] ?? 0;
  return values.length % 2 === 1 ? upper : ((values[middle - 1] ?? 0) + upper) / 2;
}
