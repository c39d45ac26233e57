import { meanOf, standardDeviationOf } from '#numerics';
import type { Estimate } from '#workshop';
import { pertMeanOf } from './hours/beta-pert.ts';

/** Fewer finished jobs than this teach nothing yet. Common practice, no source. */
export const LEAST_JOBS = 3;

/** 10 % and 90 % points of the normal distribution. @source ABRAMOWITZ-STEGUN 26.2 */
const TENTH = 1.2815515655446004;

/** What the shop’s own finished jobs say about one kind of work: actual hours against those expected. */
export interface LearntHours {
  readonly operation: string;
  readonly jobs: number;
  /** Middle ratio of actual to expected, exp of the mean log ratio. */
  readonly factor: number;
  /** Ratios that one job in ten stays below, and one in ten goes beyond. */
  readonly lowFactor: number;
  readonly highFactor: number;
  /** What the jobs took, whatever was expected: the hours one in ten stays below, the middle, the hours one in ten goes beyond. */
  readonly hours: { readonly low: number; readonly likely: number; readonly high: number };
}

/**
 * Learns from lines of work that say what kind they are and what they took: mean and spread of ln(actual/expected), and of
 * ln(actual), by kind. The spread is that of the jobs themselves: few jobs know little of it.
 * Kinds with fewer jobs than `LEAST_JOBS` are left out, as are hours of nought.
 * @source OWN log-normal ratio
 */
export function learntHoursOf(estimates: readonly Pick<Estimate, 'lines'>[]): readonly LearntHours[] {
  const jobs = new Map<string, { readonly ratio: number; readonly took: number }[]>();
  for (const line of estimates.flatMap(({ lines }) => lines)) {
    if (line.kind !== 'labour' || line.operation === '' || line.actualH === null || line.actualH <= 0) continue;
    const expected = pertMeanOf(line);
    if (expected > 0) jobs.set(line.operation, [...(jobs.get(line.operation) ?? []), { ratio: Math.log(line.actualH / expected), took: Math.log(line.actualH) }]);
  }
  return [...jobs].filter(([, done]) => done.length >= LEAST_JOBS).map(([operation, done]) => {
    const [ratio, took] = [spreadOf(done.map((one) => one.ratio)), spreadOf(done.map((one) => one.took))];
    return { operation, jobs: done.length, factor: ratio.likely, lowFactor: ratio.low, highFactor: ratio.high, hours: took };
  }).sort((a, b) => a.operation.localeCompare(b.operation));
}

/** Tenth, middle and nine tenths of a log-normal quantity by its logarithms. */
function spreadOf(logs: readonly number[]): LearntHours['hours'] {
  const [mean, sd] = [meanOf(logs), standardDeviationOf(logs)];
  return { low: Math.exp(mean - TENTH * sd), likely: Math.exp(mean), high: Math.exp(mean + TENTH * sd) };
}
