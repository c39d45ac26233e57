/** Where the series of the error function gives way to the continued fraction; both hold 12 digits there. */
const SERIES_UP_TO = 2.5;

/** Φ(−x)·2 for the scaled argument: the complementary error function, for x ≥ 0. @source ABRAMOWITZ-STEGUN 7.1.5 and 7.1.14 */
function complementaryErrorOf(x: number): number {
  if (x < SERIES_UP_TO) {
    let [term, sum] = [x, x];
    for (let n = 1; Math.abs(term) > 1e-17 * sum; n += 1) {
      term *= (-x * x) / n;
      sum += term / (2 * n + 1);
    }
    return 1 - (2 / Math.sqrt(Math.PI)) * sum;
  }
  let below = x;
  for (let k = 120; k >= 1; k -= 1) below = x + k / 2 / below;
  return Math.exp(-x * x) / (below * Math.sqrt(Math.PI));
}

/** Probability that a standard normal figure is at most z; relative accuracy kept in the lower tail. @source ABRAMOWITZ-STEGUN 26.2 */
export function normalProbabilityOf(z: number): number {
  const tail = complementaryErrorOf(Math.abs(z) / Math.SQRT2) / 2;
  return z <= 0 ? tail : 1 - tail;
}

/** Density of the standard normal distribution: exp(−z²/2)/√(2π). */
export function normalDensityOf(z: number): number {
  return Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
}
