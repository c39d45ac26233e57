import { type Ratio, ratio } from '#units';

/**
 * Roughness of a row of figures: √(mean of (ln x_{i} − 2·ln x_{i−1} + ln x_{i−2})²) over every three neighbours that are all
 * known, but for those that end at a place of `skipped` (the two above a break); 0.01 is a note that stands 1 % off the line of its neighbours, on the whole. Scale-free; `undefined` without such three.
 * @source OWN
 */
export function roughnessOf(values: readonly (number | undefined)[], skipped: ReadonlySet<number> = NONE): Ratio | undefined {
  const squares = values.flatMap((here, i) => {
    const [one, two] = [values[i - 1], values[i - 2]];
    return skipped.has(i) || here === undefined || one === undefined || two === undefined ? [] : [(Math.log(here) - 2 * Math.log(one) + Math.log(two)) ** 2];
  });
  return squares.length === 0 ? undefined : ratio(Math.sqrt(squares.reduce((sum, square) => sum + square, 0) / squares.length));
}

const NONE: ReadonlySet<number> = new Set();
