import { type Random, normalColumn, seededRandom } from '#numerics';
import { type ThreePoints, pertMeanOf, pertSdOf, pertShapeOf, quantileTableOf, shareAt } from './beta-pert.ts';

/** A task of a job: its hours, and how likely it comes up at all, as for damage that may be hidden. */
export interface HoursTask extends ThreePoints {
  /** In percent; 100 for what is sure to come. */
  readonly chancePct: number;
}

export interface HoursQuestion {
  readonly tasks: readonly HoursTask[];
  /** Correlation of the normal scores of any two tasks, 0 to 1. */
  readonly correlation: number;
  readonly runs: number;
  readonly seed: number;
}

/** Hours of a whole job: of the runs, and in closed form. */
export interface HoursAnswer {
  readonly meanH: number;
  readonly sdH: number;
  readonly p50H: number;
  readonly p80H: number;
  readonly p90H: number;
  readonly exactMeanH: number;
  readonly closedFormSdH: number;
}

/**
 * Hours of a job by drawing it many times: each task beta-PERT, tied together by one normal factor (Gaussian copula), branches by their chance.
 * A column of runs at a time. P80 is the figure that 80 % of the runs stay at or below.
 * Runs at least 1; the same seed gives the same figures.
 * @source PERT-1959; NELSEN-2006 Gaussian copula
 */
export function simulateHours({ tasks, correlation, runs, seed }: HoursQuestion): HoursAnswer {
  const random = seededRandom(seed);
  const common = normalColumn(runs, random);
  const totals = new Float64Array(runs);
  for (const task of tasks) addTask(totals, task, { common, correlation, random });
  const mean = totals.reduce((sum, hours) => sum + hours, 0) / runs;
  const spread = totals.reduce((sum, hours) => sum + (hours - mean) ** 2, 0);
  const sorted = totals.sort();
  return {
    meanH: mean, sdH: runs > 1 ? Math.sqrt(spread / (runs - 1)) : 0,
    p50H: quantileOf(sorted, 0.5), p80H: quantileOf(sorted, 0.8), p90H: quantileOf(sorted, 0.9),
    ...closedFormOf(tasks, correlation),
  };
}

interface Draw {
  readonly common: Float64Array;
  readonly correlation: number;
  readonly random: Random;
}

function addTask(totals: Float64Array, task: HoursTask, { common, correlation, random }: Draw): void {
  const chance = task.chancePct / 100;
  const shape = pertShapeOf(task);
  const own = normalColumn(totals.length, random);
  const table = shape === undefined ? undefined : quantileTableOf(shape);
  const [shared, apart] = [Math.sqrt(correlation), Math.sqrt(1 - correlation)];
  const range = task.high - task.low;
  for (let run = 0; run < totals.length; run += 1) {
    if (chance < 1 && random.uniform() >= chance) continue;
    const share = table === undefined ? 0 : shareAt(table, shared * (common[run] ?? 0) + apart * (own[run] ?? 0));
    totals[run] = (totals[run] ?? 0) + task.low + range * share;
  }
}

/** Quantile of sorted figures, laid in between neighbours. @source HYNDMAN-FAN-1996 definition 7 */
function quantileOf(sorted: Float64Array, share: number): number {
  const place = (sorted.length - 1) * share;
  const [below, above] = [sorted[Math.floor(place)] ?? 0, sorted[Math.ceil(place)] ?? 0];
  return below + (place - Math.floor(place)) * (above - below);
}

/**
 * Mean and standard deviation without drawing: mean Σ p·μ; variance Σ (p(σ² + μ²) − p²μ²) + ρ((Σ pσ)² − Σ p²σ²).
 * Exact for the mean, and for the spread where tasks are independent; a correlation of scores gives one of hours a little smaller.
 * @source OWN variance of a sum, with branches
 */
export function closedFormOf(tasks: readonly HoursTask[], correlation: number): { readonly exactMeanH: number; readonly closedFormSdH: number } {
  let [mean, own, tied, tiedSquares] = [0, 0, 0, 0];
  for (const task of tasks) {
    const [chance, hours, sd] = [task.chancePct / 100, pertMeanOf(task), pertSdOf(task)];
    mean += chance * hours;
    own += chance * (sd ** 2 + hours ** 2) - (chance * hours) ** 2;
    tied += chance * sd;
    tiedSquares += (chance * sd) ** 2;
  }
  return { exactMeanH: mean, closedFormSdH: Math.sqrt(Math.max(0, own + correlation * (tied ** 2 - tiedSquares))) };
}
