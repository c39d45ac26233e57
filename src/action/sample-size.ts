import { noneDrawnProbability } from '#numerics';

/** Two-sided 95 % of the normal distribution, rounded as is customary. @source JCGM-100 table G.1 */
const NORMAL_95 = 1.96;

/** What counts as rounding in a probability or a count before it is rounded up. */
const ROUNDING = 1e-12;

/**
 * How many keys to weigh for a mean to within a half-width, with 95 % confidence.
 * n₀ = (1.96 s/d)², n = n₀/(1 + (n₀ − 1)/N), rounded up; at least 1, at most N.
 * s standard deviation expected, d half-width above nought, same unit; N keys. Takes the keys as drawn at random.
 * @source OWN normal interval with the correction for a finite population
 */
export function sampleSizeForMean({ sd, halfWidth, keys }: { readonly sd: number; readonly halfWidth: number; readonly keys: number }): number {
  const infinite = ((NORMAL_95 * sd) / halfWidth) ** 2;
  const corrected = infinite > 1 ? 1 / (1 / infinite + (1 - 1 / infinite) / keys) : infinite;
  return Math.min(keys, Math.max(1, Math.ceil(corrected * (1 - ROUNDING))));
}

/** A sample, and how likely it is to show no bad key. */
export interface Detection {
  readonly sampleSize: number;
  readonly missProbability: number;
}

/**
 * How many keys to weigh to find at least one of `bad` bad ones with the confidence asked.
 * Smallest n with C(N − b, n)/C(N, n) ≤ 1 − confidence; 1 ≤ b ≤ N, 0 < confidence ≤ 1. Takes the keys as drawn at random.
 * @source OWN hypergeometric distribution, exact
 */
export function sampleSizeToDetect({ bad, confidence, keys }: { readonly bad: number; readonly confidence: number; readonly keys: number }): Detection {
  let [low, high] = [0, keys - bad + 1];
  while (high - low > 1) {
    const drawn = (low + high) >> 1;
    if (isConfident(keys, bad, drawn, confidence)) high = drawn;
    else low = drawn;
  }
  return { sampleSize: high, missProbability: noneDrawnProbability({ population: keys, marked: bad, drawn: high }) };
}

/** What a clean sample still leaves open. */
export interface Bound extends Detection {
  /** Most bad keys that a sample without any does not rule out. */
  readonly maxBad: number;
}

/**
 * How many bad keys there may still be when none of the keys sampled is bad.
 * Largest b with C(N − b, n)/C(N, n) > 1 − confidence; n ≤ N sampled. Takes the keys as drawn at random.
 * @source OWN hypergeometric distribution, exact
 */
export function boundOfBad({ sampled, confidence, keys }: { readonly sampled: number; readonly confidence: number; readonly keys: number }): Bound {
  let [low, high] = [0, keys - sampled + 1];
  while (high - low > 1) {
    const bad = (low + high) >> 1;
    if (isConfident(keys, bad, sampled, confidence)) high = bad;
    else low = bad;
  }
  return { sampleSize: sampled, maxBad: low, missProbability: noneDrawnProbability({ population: keys, marked: low, drawn: sampled }) };
}

/** True when a sample without a bad key would be rarer than the doubt allowed. */
function isConfident(population: number, marked: number, drawn: number, confidence: number): boolean {
  return 1 - noneDrawnProbability({ population, marked, drawn }) >= confidence - ROUNDING;
}
