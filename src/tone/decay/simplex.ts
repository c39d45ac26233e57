/** A point and what it costs. */
interface Corner {
  readonly at: readonly number[];
  readonly cost: number;
}

/** Corners that cost the same to this share are one. */
const CLOSE = 1e-9;

/**
 * Least of a function of a few parameters by the downhill simplex: reflect, stretch, draw in. Deterministic.
 * Ends after `turns` or when the corners cost the same to one part in 10⁹.
 * @source NELDER-MEAD-1965
 */
export function leastOf(costOf: (at: readonly number[]) => number, start: readonly number[], step: number, turns = 250): Corner {
  const corner = (at: readonly number[]): Corner => ({ at, cost: costOf(at) });
  let corners = [start, ...start.map((_, index) => start.map((value, place) => (place === index ? value + step : value)))].map(corner);
  for (let turn = 0; turn < turns; turn++) {
    corners = [...corners].sort((a, b) => a.cost - b.cost);
    const [best, worst] = [corners[0], corners.at(-1)];
    if (best === undefined || worst === undefined || worst.cost - best.cost <= CLOSE * Math.abs(best.cost)) break;
    const others = corners.slice(0, -1);
    const centre = start.map((_, index) => others.reduce((sum, { at }) => sum + (at[index] ?? 0), 0) / others.length);
    const along = (share: number): Corner => corner(centre.map((value, index) => value + share * ((worst.at[index] ?? 0) - value)));
    corners = next({ best, worst, others, along }) ?? [best, ...corners.slice(1).map(({ at }) => corner(at.map((value, index) => (value + (best.at[index] ?? 0)) / 2)))];
  }
  return corners.reduce((best, one) => (one.cost < best.cost ? one : best));
}

interface Turn {
  readonly best: Corner;
  readonly worst: Corner;
  readonly others: readonly Corner[];
  readonly along: (share: number) => Corner;
}

/** The simplex with its worst corner replaced, or undefined when it must shrink. */
function next({ best, worst, others, along }: Turn): Corner[] | undefined {
  const reflected = along(-1);
  if (reflected.cost < best.cost) {
    const stretched = along(-2);
    return [...others, stretched.cost < reflected.cost ? stretched : reflected];
  }
  if (reflected.cost < (others.at(-1)?.cost ?? Infinity)) return [...others, reflected];
  const drawn = along(reflected.cost < worst.cost ? -0.5 : 0.5);
  return drawn.cost < Math.min(worst.cost, reflected.cost) ? [...others, drawn] : undefined;
}
