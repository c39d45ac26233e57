import { medianOf, scaledMadOf, whittakerSmooth } from '#numerics';
import { type Result, ok, refuse } from '#result';

/** A figure of one key. */
export interface KeyFigure {
  readonly key: number;
  readonly value: number;
  /** Standard uncertainty. */
  readonly uncertainty?: number | undefined;
}

/** A key beside the curve through its neighbours. */
export interface KeyOffset {
  readonly key: number;
  readonly value: number;
  readonly curve: number;
  readonly offset: number;
  readonly uncertainty?: number | undefined;
}

/** A row of keys beside a smooth curve. */
export interface AlongKeys {
  readonly keys: readonly KeyOffset[];
  /** Robust standard deviation of the offsets. */
  readonly scatter: number;
}

/** Fewest keys a curve is laid through. */
export const FEWEST_KEYS = 6;
/** How stiff the curve is unless said otherwise: third differences over half a dozen neighbours. */
export const USUAL_LAMBDA = 100;
const TURNS = 8;
/** Offsets beyond this many scatters weigh nothing. @source TUKEY-BIWEIGHT */
const BISQUARE = 4.685;

/**
 * Lays a smooth curve along the keys, keys without a figure left open, so that single keys that stand out do not bend it: Whittaker’s
 * smoother with Tukey’s bisquare weights, w = (1 − (r/4.685·s)²)², s the robust scatter of the offsets.
 * @source EILERS-WHITTAKER
 * @source TUKEY-BIWEIGHT
 */
export function alongKeysOf(figures: readonly KeyFigure[], lambda: number = USUAL_LAMBDA): Result<AlongKeys> {
  const issues = figures.flatMap(({ key }, index) => (figures.findIndex((other) => other.key === key) < index ? [{ code: 'duplicate' as const, path: `notes[${String(index)}].key`, given: key, allowed: 'each key once' }] : []));
  if (issues.length > 0) return refuse(...issues);
  if (figures.length < FEWEST_KEYS) return refuse({ code: 'length', path: 'notes', given: figures.length, allowed: `at least ${String(FEWEST_KEYS)} keys with a figure`, params: { min: FEWEST_KEYS, of: 'array' } });
  const sorted = [...figures].sort((a, b) => a.key - b.key);
  const first = sorted[0]?.key ?? 1;
  let weights = sorted.map(() => 1);
  let keys: readonly KeyOffset[] = [];
  for (let turn = 0; turn < TURNS; turn++) {
    const curve = curveThrough(sorted, weights, first, lambda);
    if (curve === undefined) return refuse({ code: 'unsolvable', path: 'lambda', given: lambda, allowed: 'more than 0' });
    keys = sorted.map(({ key, value, uncertainty }) => ({ key, value, curve: curve[key - first] ?? value, offset: value - (curve[key - first] ?? value), ...(uncertainty === undefined ? {} : { uncertainty }) }));
    const limit = BISQUARE * scatterOf(keys);
    weights = keys.map(({ offset }) => (limit === 0 ? 1 : Math.max(LEAST_WEIGHT, (1 - Math.min(1, (offset / limit) ** 2)) ** 2)));
  }
  return ok({ keys, scatter: scatterOf(keys) });
}

/** So that a curve stays fixed where whole stretches stand out. */
const LEAST_WEIGHT = 1e-6;

const scatterOf = (keys: readonly KeyOffset[]): number => scaledMadOf(keys.map(({ offset }) => offset));

function curveThrough(sorted: readonly KeyFigure[], weights: readonly number[], first: number, lambda: number): readonly number[] | undefined {
  const count = (sorted.at(-1)?.key ?? first) - first + 1;
  const values = new Array<number>(count).fill(0);
  const open = new Array<number>(count).fill(0);
  for (const [index, { key, value }] of sorted.entries()) {
    values[key - first] = value;
    open[key - first] = weights[index] ?? 0;
  }
  return whittakerSmooth(values, open, lambda);
}

/** Median of a list, or 0 of an empty one. */
export function middleOf(values: readonly number[]): number {
  return values.length === 0 ? 0 : medianOf(values);
}
