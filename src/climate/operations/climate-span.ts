import { defineOperation, field } from '#operation';
import { ok, refuse } from '#result';
import { z } from 'zod';
import { climateSpanOf } from '../season/span.ts';
import { logOrderIssues } from './log-order.ts';

const HOURS_A_DAY = 24;

/** The ends and the middle of a log of the air, and of the moisture of wood that follows it. */
export const climateSpanOperation = defineOperation({
  name: 'climate-span',
  input: z.strictObject({
    log: z.array(z.strictObject({
      hourCount: field.number({ min: 0, max: 10_000_000, describe: 'Hours from any beginning' }),
      temperatureC: field.celsius({ min: -40, max: 60, describe: 'Temperature, where it was read' }).nullable().default(null),
      humidityPct: field.percent({ min: 0, max: 100, describe: 'Relative humidity' }),
    })).min(1).max(200_000).describe('Readings of the log, oldest first'),
    lagDays: field.number({ min: 0, max: 365, describe: 'How far the wood follows behind the air' }).default(14),
  }),
  output: z.strictObject({
    leastHumidityPct: field.percent({ describe: 'Lowest humidity' }), meanHumidityPct: field.percent({ describe: 'Mean humidity' }), mostHumidityPct: field.percent({ describe: 'Highest humidity' }),
    usualLowHumidityPct: field.percent({ describe: 'Humidity below which 7 of 100 readings lie' }), usualHighHumidityPct: field.percent({ describe: 'Humidity below which 93 of 100 readings lie' }),
    leastTemperatureC: field.celsius({ describe: 'Lowest temperature' }).optional(), meanTemperatureC: field.celsius({ describe: 'Mean temperature' }).optional(), mostTemperatureC: field.celsius({ describe: 'Highest temperature' }).optional(),
    driestMoisturePct: field.percent({ describe: 'Lowest moisture of the wood' }), dampestMoisturePct: field.percent({ describe: 'Highest moisture of the wood' }),
  }),
  formula: ['least, mean and greatest of the readings, each counted alike', 'mostly: the 7th and the 93rd hundredth of the readings in order, laid in a straight line between two of them', 'moisture: dm/dt = (M(T, H) − m)/τ, M of steady air; 20 °C where no temperature was read'],
  sources: ['FPL-190', 'EN-15757', 'OWN', 'PRACTICE'],
  example: { log: [48, 47, 44, 39, 34, 33, 36, 41].map((humidityPct, index) => ({ hourCount: 4 * index, temperatureC: 20 + (index % 2), humidityPct })), lagDays: 14 },
  run: ({ log, lagDays }) => {
    const faults = logOrderIssues(log);
    const span = faults.length > 0 ? undefined : climateSpanOf(log.map(({ hourCount, ...at }) => ({ ...at, dayCount: hourCount / HOURS_A_DAY })), lagDays);
    if (span === undefined) return refuse(...faults);
    const { humidity, usual: [low, high], temperature, moisture } = span;
    return ok({
      leastHumidityPct: humidity.least, meanHumidityPct: humidity.mean, mostHumidityPct: humidity.most, usualLowHumidityPct: low, usualHighHumidityPct: high,
      ...(temperature === undefined ? {} : { leastTemperatureC: temperature.least, meanTemperatureC: temperature.mean, mostTemperatureC: temperature.most }),
      driestMoisturePct: moisture.least, dampestMoisturePct: moisture.most,
    });
  },
});
