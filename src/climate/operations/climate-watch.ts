import { defineOperation, field } from '#operation';
import { ok, refuse } from '#result';
import { percent } from '#units';
import { z } from 'zod';
import { watchOf } from '../season/watch.ts';
import { logOrderIssues } from './log-order.ts';

const hour = (describe: string) => field.number({ min: 0, max: 10_000_000, describe });

/** How long a climate log stood outside a band, and where it changed too fast. */
export const climateWatchOperation = defineOperation({
  name: 'climate-watch',
  input: z.strictObject({
    log: z.array(z.strictObject({ hourCount: hour('Hours from any beginning'), humidityPct: field.percent({ min: 0, max: 100, describe: 'Relative humidity, mean of the hour' }) })).min(1).max(200_000).describe('Hours of the log, oldest first'),
    lowPct: field.percent({ min: 0, max: 100, describe: 'Below it the air is too dry' }),
    highPct: field.percent({ min: 0, max: 100, describe: 'Above it the air is too damp' }),
    dayChangePct: field.percent({ above: 0, max: 100, describe: 'Change within 24 hours that is let pass' }),
  }),
  output: z.strictObject({
    loggedHours: field.count({ describe: 'Hours that have a reading' }),
    dryHours: field.count({ describe: 'Hours below the band' }),
    dampHours: field.count({ describe: 'Hours above the band' }),
    fastHours: field.count({ describe: 'Hours at the end of a day that changed by more than is let pass' }),
    insideSharePct: field.percent({ describe: 'Share of the hours inside the band' }),
    longestHours: field.number({ describe: 'Longest stretch outside the band' }),
    alarms: z.array(z.strictObject({
      what: z.enum(['dry', 'damp', 'fast']).describe('Too dry, too damp, or changed too fast'),
      fromHourCount: hour('First hour'), toHourCount: hour('Last hour'),
      worstPct: field.percent({ describe: 'Lowest or highest humidity of the stretch, or the largest change within 24 hours' }),
    })).describe('Stretches outside, oldest first'),
  }),
  formula: ['dry: H < low; damp: H > high', 'fast: max(H) − min(H) over 24 h > change', 'each reading counts for one hour; a stretch ends at a hole of more than 6 h'],
  sources: ['OWN', 'PRACTICE'],
  example: { log: [48, 47, 44, 39, 34, 33, 36, 41].map((humidityPct, index) => ({ hourCount: index * 4, humidityPct })), lowPct: 35, highPct: 65, dayChangePct: 10 },
  run: ({ log, lowPct, highPct, dayChangePct }) => {
    const faults = [...logOrderIssues(log)];
    if (lowPct >= highPct) faults.push({ code: 'order', path: 'highPct', given: highPct, allowed: `more than ${String(lowPct)}, the lower end`, params: { above: lowPct } });
    if (faults.length > 0) return refuse(...faults);
    const { hours, alarms, ...outside } = watchOf(log, { lowPct, highPct, dayChangePct });
    const stretches = alarms.filter(({ what }) => what !== 'fast').map(({ fromHourCount, toHourCount }) => toHourCount - fromHourCount + 1);
    return ok({
      loggedHours: hours, ...outside, insideSharePct: percent((100 * (hours - outside.dryHours - outside.dampHours)) / hours), longestHours: Math.max(0, ...stretches),
      alarms: alarms.map((alarm) => ({ ...alarm, worstPct: percent(alarm.worstPct) })),
    });
  },
});
