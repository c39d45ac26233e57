import type { KeyNumber } from '#instrument';
import { medianInPlace } from './median.ts';

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
const MOST_SLOPES = (NEIGHBOURS * (NEIGHBOURS - 1)) / 2;

/** Keys in order with their figures, side by side. */
interface Row {
  readonly keys: Float64Array;
  readonly values: Float64Array;
}

/** A key's place in the row and the run of its neighbours around it, ends included. */
interface Window {
  readonly at: number;
  readonly low: number;
  readonly high: number;
}

type Slope = (row: Row, window: Window, scratch: Float64Array) => number;

/**
 * What each key's neighbours lead one to expect: a Theil–Sen line through the 12 nearest keys of the list, the key itself left out.
 * slope = median of all (yⱼ − yᵢ)/(xⱼ − xᵢ); level = median of y − slope·x. Give one colour at a time where the colours differ.
 * Takes up to 29 % of faulty neighbours without moving far. Keys of the list must differ. Fewer than 5 neighbours: no expectation.
 * @source SEN-1968
 */
export function expectedByLine(list: readonly KeyValue[]): ReadonlyMap<KeyNumber, Expected> {
  return expectedBy(list, medianSlope);
}

/** The same with the plain median of the 12 nearest, for figures that do not run along the keyboard, such as the ratio. @source OWN */
export function expectedByMedian(list: readonly KeyValue[]): ReadonlyMap<KeyNumber, Expected> {
  return expectedBy(list, () => 0);
}

function expectedBy(list: readonly KeyValue[], slopeThrough: Slope): ReadonlyMap<KeyNumber, Expected> {
  if (list.length <= FEWEST) return new Map();
  const sorted = [...list].sort((a, b) => a.key - b.key);
  const row = { keys: Float64Array.from(sorted, ({ key }) => key), values: Float64Array.from(sorted, ({ value }) => value) };
  const scratch = new Float64Array(Math.max(MOST_SLOPES, sorted.length));
  const levels = sorted.map((_, at) => {
    const window = windowAround(row.keys, at);
    return { ...levelAt(row, window, slopeThrough(row, window, scratch), scratch), neighbours: window.high - window.low };
  });
  levels.forEach(({ scatter }, at) => (scratch[at] = scatter));
  const usual = medianInPlace(scratch, levels.length);
  return new Map(levels.map(({ value, scatter, neighbours }, at) => [sorted[at]?.key ?? 0, { value, scatter: Math.max(scatter, usual), neighbours }]));
}

/** Widens around a place until 12 neighbours are in, the nearer key first; of two equally near the lower. */
function windowAround(keys: Float64Array, at: number): Window {
  const here = keys[at] ?? 0;
  let low = at;
  let high = at;
  while (high - low < NEIGHBOURS && high - low < keys.length - 1) {
    const below = low > 0 ? here - (keys[low - 1] ?? 0) : Number.POSITIVE_INFINITY;
    const above = high < keys.length - 1 ? (keys[high + 1] ?? 0) - here : Number.POSITIVE_INFINITY;
    if (below <= above) low -= 1;
    else high += 1;
  }
  return { at, low, high };
}

function medianSlope({ keys, values }: Row, { at, low, high }: Window, scratch: Float64Array): number {
  let count = 0;
  for (let i = low; i < high; i += 1) {
    if (i === at) continue;
    const [x, y] = [keys[i] ?? 0, values[i] ?? 0];
    for (let j = i + 1; j <= high; j += 1) {
      if (j !== at) scratch[count++] = ((values[j] ?? 0) - y) / ((keys[j] ?? 0) - x);
    }
  }
  return medianInPlace(scratch, count);
}

/** Median of the neighbours carried to the key along the slope, and their scatter about the line. */
function levelAt({ keys, values }: Row, { at, low, high }: Window, slope: number, scratch: Float64Array): Pick<Expected, 'value' | 'scatter'> {
  const here = keys[at] ?? 0;
  const gather = (figureOf: (carried: number) => number): number => {
    let count = 0;
    for (let i = low; i <= high; i += 1) {
      if (i !== at) scratch[count++] = figureOf((values[i] ?? 0) - slope * ((keys[i] ?? 0) - here));
    }
    return medianInPlace(scratch, count);
  };
  const value = gather((carried) => carried);
  return { value, scatter: NORMAL_CONSISTENCY * gather((carried) => Math.abs(carried - value)) };
}
