import { defineOperation, field } from '#operation';
import { type Issue, ok, refuse } from '#result';
import { celsius, percent } from '#units';
import { z } from 'zod';
import { seasonFitOf } from '../season/season-fit.ts';

/** Fewer figures than this say nothing: two are the line, one the lag, and three to spare. @source OWN */
export const LEAST_OBSERVED = 6;
/** Wood must have moved by so much between the driest and the dampest figure; per cent. @source OWN */
export const LEAST_SPAN_PCT = 1;

const day = (describe: string) => field.number({ min: -100_000, max: 100_000, describe });
const input = z.strictObject({
  air: z.array(z.strictObject({
    dayCount: day('Days from any beginning'),
    temperatureC: field.celsius({ min: 0, max: 50, describe: 'Temperature of the air' }),
    humidityPct: field.percent({ min: 0, max: 100, describe: 'Relative humidity of the air' }),
  })).min(2).max(100_000).describe('The log, oldest first'),
  observed: z.array(z.strictObject({
    dayCount: day('The day, counted from the same beginning'),
    value: field.number({ min: -1e6, max: 1e6, describe: 'Pitch, bearing or another figure of the piano, all in one unit' }),
    sinceDayCount: day('The day since which it changed by the value; left out where the value is what it was').optional(),
  })).min(1).max(10_000).describe('Figures of the piano, oldest first'),
  lagDays: z.array(field.number({ min: 0, max: 365, describe: 'How far the wood follows behind the air' })).min(1).max(20).describe('Lags to try; the one that fits best is kept'),
});
type Input = z.output<typeof input>;

/** How pitch, bearing or another figure of a piano goes with the moisture of its wood, by its own log. */
export const seasonRegressionOperation = defineOperation({
  name: 'season-regression',
  input,
  output: z.strictObject({
    slopePerPct: field.number({ describe: 'Change of the figure for one per cent more moisture in the wood, in the unit of the figure' }),
    slopeHalfWidthPerPct: field.number({ describe: 'Half-width of the 95 % interval' }),
    intercept: field.number({ describe: 'The figure at no moisture; of changes, what changed without moisture' }),
    interceptHalfWidth: field.number({ describe: 'Half-width of the 95 % interval' }),
    scatter: field.number({ describe: 'Standard deviation of a figure about the line' }),
    bestLagDays: field.number({ describe: 'The lag that fits best of those tried' }),
    spanPct: field.percent({ describe: 'From the driest to the dampest wood among the figures' }),
    degreesOfFreedom: field.count({ describe: 'Figures less what was fitted to them' }),
    isTold: z.boolean().describe('Whether the 95 % interval of the slope leaves out nought'),
  }),
  formula: ['value = a + b·m, ordinary least squares', 'dm/dt = (M − m)/lag; M: moisture of wood in steady air', 'interval = t₀.₉₅·u, one freedom less for the choice of the lag'],
  sources: ['OWN', 'FPL-190', 'JCGM-100'],
  example: {
    air: [35, 38, 44, 52, 60, 63, 61, 55, 47, 40, 36, 34].map((humidityPct, month) => ({ dayCount: month * 30, temperatureC: 20, humidityPct })),
    observed: [[0, -6.1], [60, -3.2], [120, 3.4], [180, 4.2], [240, 0.3], [300, -5.2], [330, -6.9]].map(([dayCount, value]) => ({ dayCount, value })),
    lagDays: [0, 7, 30],
  },
  run: ({ air, observed, lagDays }) => {
    const faults = [...orderIssues('air', air), ...outsideIssues({ air, observed, lagDays })];
    if (faults.length > 0) return refuse(...faults);
    if (observed.length < LEAST_OBSERVED) return refuse({ code: 'length', path: 'observed', given: observed.length, allowed: `at least ${String(LEAST_OBSERVED)} figures`, params: { reason: 'season.few', least: LEAST_OBSERVED, count: observed.length } });
    const fit = seasonFitOf(air.map((at) => ({ dayCount: at.dayCount, temperatureC: celsius(at.temperatureC), humidityPct: percent(at.humidityPct) })), observed, lagDays);
    const span = fit?.moistureSpanPct ?? 0;
    if (fit === undefined || span < LEAST_SPAN_PCT) return refuse({ code: 'range', path: 'observed', given: Number(span.toFixed(2)), allowed: `figures over at least ${String(LEAST_SPAN_PCT)} % of moisture`, params: { reason: 'season.narrow', least: LEAST_SPAN_PCT, span: Number(span.toFixed(2)) } });
    const half = fit.coverage * fit.slopeUncertainty;
    return ok({
      slopePerPct: fit.slope, slopeHalfWidthPerPct: half, intercept: fit.intercept, interceptHalfWidth: fit.coverage * fit.interceptUncertainty, scatter: fit.scatter,
      bestLagDays: fit.lagDays, spanPct: percent(span), degreesOfFreedom: fit.freedom, isTold: Math.abs(fit.slope) > half,
    });
  },
});

function orderIssues(path: string, days: readonly { readonly dayCount: number }[]): readonly Issue[] {
  return days.flatMap(({ dayCount }, index): readonly Issue[] => {
    const before = days[index - 1]?.dayCount ?? -Infinity;
    return dayCount > before ? [] : [{ code: 'order', path: `${path}[${String(index)}].dayCount`, given: dayCount, allowed: `more than ${String(before)}, the one before`, params: { above: before } }];
  });
}

/** A figure of a day the log does not reach to has no moisture. */
function outsideIssues({ air, observed }: Input): readonly Issue[] {
  const [min, max] = [air[0]?.dayCount ?? 0, air.at(-1)?.dayCount ?? 0];
  return observed.flatMap(({ dayCount, sinceDayCount }, index) => ([['dayCount', dayCount], ['sinceDayCount', sinceDayCount]] as const).flatMap(([name, given]): readonly Issue[] =>
    given === undefined || (given >= min && given <= max) ? [] : [{ code: 'range', path: `observed[${String(index)}].${name}`, given, allowed: `${String(min)} to ${String(max)}, the days of the log`, params: { min, max } }]));
}
