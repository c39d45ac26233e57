import { linearFitOf, studentFactorOf } from '#numerics';
import { type AirAt, type MoistureAt, laggedMoistureOf, moistureOn } from './lagged-moisture.ts';

/** A figure of the piano on a day: what it was, or with `sinceDayCount` what it changed by since another day. */
export interface Observed {
  readonly dayCount: number;
  readonly value: number;
  readonly sinceDayCount?: number | undefined;
}

/** A straight line through figures over moisture, with how sure it is. */
export interface Line {
  readonly slope: number;
  readonly intercept: number;
  /** Standard uncertainties. */
  readonly slopeUncertainty: number;
  readonly interceptUncertainty: number;
  /** Standard deviation of a figure about the line. */
  readonly scatter: number;
  readonly freedom: number;
}

/** Ordinary least squares y = a + b·x. `undefined` where there are fewer than three points or x does not vary. @source JCGM-100 annex H.3 */
export function lineThrough(x: readonly number[], y: readonly number[]): Line | undefined {
  const fit = linearFitOf(x.map((at) => [1, at]), y);
  if (fit === undefined) return undefined;
  const [intercept = 0, slope = 0] = fit.coefficients;
  const [interceptUncertainty = 0, slopeUncertainty = 0] = fit.uncertainties;
  return { slope, intercept, slopeUncertainty, interceptUncertainty, scatter: fit.residual, freedom: fit.freedom };
}

/** How a figure goes with the moisture of the wood, at the lag that fits best of those tried. */
export interface SeasonFit extends Line {
  readonly lagDays: number;
  /** Factor for 95 %, one freedom less where the lag was chosen. */
  readonly coverage: number;
  /** From the driest to the dampest wood among the figures; per cent. */
  readonly moistureSpanPct: number;
  readonly moistures: readonly number[];
}

/**
 * Fits value = a + b·m by ordinary least squares for each lag and keeps the one with the least scatter. m: moisture of the wood on the
 * day, or its change since the other day. `undefined` where no lag bears a line. Every day must lie within the air.
 * Ignores that figures close in time share their errors, and the age of new strings.
 * @source OWN @source JCGM-100 annex H.3
 */
export function seasonFitOf(air: readonly AirAt[], observed: readonly Observed[], lagDays: readonly number[]): SeasonFit | undefined {
  const fits = lagDays.flatMap((lag): readonly SeasonFit[] => {
    const moistures = moisturesOf(laggedMoistureOf(air, lag), observed);
    const line = lineThrough(moistures, observed.map(({ value }) => value));
    const freedom = (line?.freedom ?? 0) - (lagDays.length > 1 ? 1 : 0);
    if (line === undefined || freedom < 1) return [];
    return [{ ...line, freedom, lagDays: lag, coverage: studentFactorOf(freedom), moistureSpanPct: Math.max(...moistures) - Math.min(...moistures), moistures }];
  });
  return fits.reduce<SeasonFit | undefined>((best, fit) => (best === undefined || fit.scatter < best.scatter ? fit : best), undefined);
}

function moisturesOf(series: readonly MoistureAt[], observed: readonly Observed[]): readonly number[] {
  const at = (dayCount: number): number => moistureOn(series, dayCount) ?? Number.NaN;
  return observed.map(({ dayCount, sinceDayCount }) => at(dayCount) - (sinceDayCount === undefined ? 0 : at(sinceDayCount)));
}
