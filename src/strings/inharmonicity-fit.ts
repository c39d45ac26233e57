import { meanOf, sumOf } from '#numerics';
import { type Hertz, type Ratio, ratio } from '#units';

/** Partials a single B is fitted to unless told otherwise: a stepped string has no one B, so the range belongs to the figure. */
export const FIT_PARTIALS = 8;

/**
 * One inharmonicity for a list of partials: least squares of (fₙ/n)² on n², B = slope over intercept.
 * Exact for a uniform pinned string; for a stepped one it depends on how many partials are taken.
 * `partialsHz` starts at partial 1 and holds two or more. @source OWN
 */
export function fittedInharmonicityOf(partialsHz: readonly Hertz[]): Ratio {
  const squares = partialsHz.map((_, index) => (index + 1) ** 2);
  const values = partialsHz.map((frequency, index) => (frequency / (index + 1)) ** 2);
  const [meanSquare, meanValue] = [meanOf(squares), meanOf(values)];
  const slope = sumOf(squares.map((square, index) => (square - meanSquare) * ((values[index] ?? meanValue) - meanValue))) / sumOf(squares.map((square) => (square - meanSquare) ** 2));
  return ratio(slope / (meanValue - slope * meanSquare));
}
