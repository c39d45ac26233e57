import { woodMoistureOf } from '#materials';
import { defineOperation, field } from '#operation';
import { type Issue, ok, refuse } from '#result';
import { celsius } from '#units';
import { z } from 'zod';
import { fields } from '../schemas.ts';
import { type DriftVisit, LEAST_SPANS, nextVisitOf, tuningDriftOf } from '../tuning-drift.ts';

const DAYS = { min: 0, max: 40_000 };
const visit = z.strictObject({
  dayCount: field.number({ ...DAYS, describe: 'Days since the strings were put on' }),
  foundCents: fields.cents('Mean pitch as found, off the pitch wanted'),
  leftCents: fields.cents('Mean pitch as left; left out where it was only measured').optional(),
  temperatureC: field.number({ min: 0, max: 50, describe: 'Air in the room' }).optional(),
  humidityPct: field.percent({ min: 0, max: 100, describe: 'Air in the room' }).optional(),
});
type Visit = z.output<typeof visit>;

/** How new strings drift with time and the moisture of the wood, and when to come back. */
export const tuningDriftOperation = defineOperation({
  name: 'tuning-drift',
  input: z.strictObject({
    visits: z.array(visit).min(1).max(1000).describe('Oldest first'),
    toleranceCents: field.cents({ min: 0.1, max: 100, describe: 'Drift that asks for the next visit' }),
  }),
  output: z.strictObject({
    spanCount: field.count({ describe: 'Spans between one visit and the next' }),
    missingSpanCount: field.count({ describe: 'Spans still wanted before anything is said' }),
    tenfoldCents: field.cents({ describe: 'Change while time since stringing grows tenfold' }).optional(),
    tenfoldUncertaintyCents: field.cents({ describe: 'Standard uncertainty' }).optional(),
    moistureCentsPerPct: field.number({ describe: 'Change for one per cent more moisture in the wood' }).optional(),
    moistureUncertaintyCentsPerPct: field.number({ describe: 'Standard uncertainty' }).optional(),
    scatterCents: field.cents({ describe: 'Standard deviation of a span about the fit' }).optional(),
    withoutMoisture: z.enum(['notStated', 'tooFew', 'alike']).describe('Why moisture was not taken in').optional(),
    nextVisitDayCount: field.number({ describe: 'Days since stringing when the drift reaches the tolerance' }).optional(),
    earliestDayCount: field.number({ describe: 'With the fastest drift the fit allows, 95 %' }).optional(),
    latestDayCount: field.number({ describe: 'With the slowest; absent where it cannot be told from none' }).optional(),
  }),
  formula: ['found₂ − left₁ = a·log₁₀[(1 + t₂)/(1 + t₁)] + h·(m₂ − m₁), least squares', 'm: moisture of wood in the air of the visit', 't_next = (1 + t_last)·10^(tolerance/|a|) − 1'],
  sources: ['OWN', 'FPL-190', 'JCGM-100'],
  example: {
    visits: [[1, -9, 0, 21, 45], [8, -6, 0, 20, 47], [40, -5.5, 0, 20, 40], [110, -2, 0, 22, 55], [200, -4.5, 0, 21, 42], [330, 1, 0, 22, 58]]
      .map(([dayCount, foundCents, leftCents, temperatureC, humidityPct]) => ({ dayCount, foundCents, leftCents, temperatureC, humidityPct })),
    toleranceCents: 3,
  },
  run: ({ visits, toleranceCents }) => {
    const faults = visits.flatMap(({ dayCount }, index): readonly Issue[] => {
      const before = visits[index - 1]?.dayCount ?? -1;
      return dayCount > before ? [] : [{ code: 'order', path: `visits[${String(index)}].dayCount`, given: dayCount, allowed: `more than ${String(before)}, the visit before`, params: { above: before } }];
    });
    if (faults.length > 0) return refuse(...faults);
    const drift = tuningDriftOf(visits.map(driftVisitOf));
    const next = nextVisitOf(drift, visits.at(-1)?.dayCount ?? 0, toleranceCents);
    const { coverage: _, ...fit } = drift.fit ?? { coverage: 0 };
    return ok({
      spanCount: drift.spans, missingSpanCount: Math.max(0, LEAST_SPANS - drift.spans), ...fit, ...(drift.withoutMoisture === undefined ? {} : { withoutMoisture: drift.withoutMoisture }),
      ...(next === undefined ? {} : { nextVisitDayCount: next.dayCount, earliestDayCount: next.earliestDayCount, ...(next.latestDayCount === undefined ? {} : { latestDayCount: next.latestDayCount }) }),
    });
  },
});

function driftVisitOf({ temperatureC, humidityPct, leftCents, ...visited }: Visit): DriftVisit {
  const isStated = temperatureC !== undefined && humidityPct !== undefined;
  return { ...visited, ...(leftCents === undefined ? {} : { leftCents }), ...(isStated ? { moisturePct: woodMoistureOf({ temperatureC: celsius(temperatureC), humidityPct }) } : {}) };
}
