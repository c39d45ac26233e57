/** Sum with Neumaier's compensation, so that a long list of small figures adds up exactly enough. @source NEUMAIER-1974 */
export function sumOf(values: readonly number[]): number {
  let sum = 0;
  let lost = 0;
  for (const value of values) {
    const next = sum + value;
    lost += Math.abs(sum) >= Math.abs(value) ? sum - next + value : value - next + sum;
    sum = next;
  }
  return sum + lost;
}

/** Arithmetic mean. @throws RangeError on an empty list: callers refuse that first. */
export function meanOf(values: readonly number[]): number {
  return sumOf(values) / countOf(values);
}

/** Sample standard deviation, n − 1 below the line; 0 for a single value. */
export function standardDeviationOf(values: readonly number[]): number {
  const mean = meanOf(values);
  if (values.length === 1) return 0;
  return Math.sqrt(sumOf(values.map((value) => (value - mean) ** 2)) / (values.length - 1));
}

/** Median: the middle value, or the mean of the two middle ones. */
export function medianOf(values: readonly number[]): number {
  countOf(values);
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  const upper = sorted[middle] ?? Number.NaN;
  return sorted.length % 2 === 1 ? upper : ((sorted[middle - 1] ?? Number.NaN) + upper) / 2;
}

/** The value a share of the list lies below, laid in a straight line between the two places beside it; 0 gives the least, 1 the greatest. @throws RangeError on an empty list. */
export function quantileOf(values: readonly number[], share: number): number {
  const place = share * (countOf(values) - 1);
  const sorted = Float64Array.from(values).sort();
  const [below = Number.NaN, above = below] = sorted.subarray(Math.floor(place), Math.floor(place) + 2);
  return below + (place % 1) * (above - below);
}

/** Makes the median absolute deviation of a normal sample an estimate of its standard deviation: 1 / Φ⁻¹(3/4). */
const NORMAL_CONSISTENCY = 1.482602218505602;

/** Median absolute deviation from the median, scaled to a normal standard deviation (MADN). */
export function scaledMadOf(values: readonly number[]): number {
  const centre = medianOf(values);
  return NORMAL_CONSISTENCY * medianOf(values.map((value) => Math.abs(value - centre)));
}

function countOf(values: readonly number[]): number {
  if (values.length === 0) throw new RangeError('statistics of an empty list');
  return values.length;
}
