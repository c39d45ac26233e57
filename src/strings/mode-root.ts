import type { ModeCount } from './mode-count.ts';

/** Where the n-th mode is looked for: `count` never falls as x grows. */
export interface ModeSearch {
  readonly count: (x: number) => ModeCount;
  readonly n: number;
  /** Fewer than n modes here; above nought. */
  readonly low: number;
  /** A first guess above the mode; widened until it is. */
  readonly high: number;
}

const MOST_DOUBLINGS = 200;
const MOST_HALVINGS = 200;
const MOST_POLISHES = 60;

/**
 * The x at which the n-th mode passes: halving by the count of modes until no pole lies between and the residual
 * changes sign once, then the secant with bracket (Illinois). Good to a few units in the last place.
 *
 * @returns `undefined` when no x up to `high`·2²⁰⁰ has n modes.
 * @source OWN
 */
export function modeRootOf({ count, n, low, high }: ModeSearch): number | undefined {
  let [lo, hi] = [{ x: low, ...count(low) }, { x: high, ...count(high) }];
  for (let step = 0; hi.below < n; step += 1) {
    if (step === MOST_DOUBLINGS) return undefined;
    lo = hi;
    hi = { x: hi.x * 1.5, ...count(hi.x * 1.5) };
  }
  for (let step = 0; step < MOST_HALVINGS && !isClean(lo, hi, n); step += 1) {
    const x = (lo.x + hi.x) / 2;
    if (x <= lo.x || x >= hi.x) return x;
    const middle = { x, ...count(x) };
    if (middle.below < n) lo = middle;
    else hi = middle;
  }
  return polished(count, lo, hi);
}

type Point = ModeCount & { readonly x: number };

const isClean = (lo: Point, hi: Point, n: number): boolean =>
  lo.below === n - 1 && hi.below === n && lo.clampedBelow === hi.clampedBelow && Number.isFinite(lo.residual) && Number.isFinite(hi.residual);

function polished(count: ModeSearch['count'], lo: Point, hi: Point): number {
  let [a, fa, b, fb] = [lo.x, lo.residual, hi.x, hi.residual];
  let side = 0;
  let last = b;
  for (let step = 0; step < MOST_POLISHES; step += 1) {
    const x = (a * fb - b * fa) / (fb - fa);
    if (!(x > a && x < b) || Math.abs(x - last) <= Number.EPSILON * x) return Number.isFinite(x) ? x : last;
    last = x;
    const { residual } = count(x);
    if (residual === 0) return x;
    if (residual > 0) {
      [a, fa] = [x, residual];
      if (side === 1) fb /= 2;
      side = 1;
    } else {
      [b, fb] = [x, residual];
      if (side === -1) fa /= 2;
      side = -1;
    }
  }
  return last;
}
