import { defineOperation, field } from '#operation';
import { type Issue, ok, refuse } from '#result';
import { percent } from '#units';
import { z } from 'zod';
import { lifeUsedOf } from '../care/life.ts';

/** What of its life a part of the piano has used, and when it may be due. */
export const lifeUsedOperation = defineOperation({
  name: 'life-used',
  input: z.strictObject({
    by: z.enum(['hours', 'years']).describe('What wears it: hours played or years'),
    lifeFrom: field.number({ min: 0.5, max: 100_000, describe: 'Shortest life to be expected, in hours or years' }),
    lifeTo: field.number({ min: 0.5, max: 100_000, describe: 'Longest life to be expected, in the same' }),
    ageDays: field.number({ min: 0, max: 100_000, describe: 'Days since the part was new or was last seen to' }),
    hoursPerWeek: field.number({ min: 0, max: 168, describe: 'Hours played in a week' }),
    intensity: field.number({ min: 0.1, max: 5, describe: '1 for usual playing, more for hard, less for soft' }),
  }),
  output: z.strictObject({
    used: field.number({ describe: 'Hours played, weighted by how hard, or years' }),
    usedLeastPct: field.percent({ describe: 'Of the longest life' }),
    usedMostPct: field.percent({ describe: 'Of the shortest life; more than 100: look at the part now' }),
    dueFromDays: field.number({ describe: 'Days until the shortest life is over, below nought once it is' }).optional(),
    dueToDays: field.number({ describe: 'Days until the longest life is over' }).optional(),
  }),
  formula: ['used = days·hours a week/7·intensity, or days/365.25', 'share = used/life', 'days left = (life − used)/(used per day)'],
  sources: ['PRACTICE'],
  example: { by: 'hours', lifeFrom: 2000, lifeTo: 4000, ageDays: 1461, hoursPerWeek: 8, intensity: 1 },
  run: ({ by, lifeFrom, lifeTo, ageDays, hoursPerWeek, intensity }) => {
    const fault: Issue = { code: 'order', path: 'lifeTo', given: lifeTo, allowed: `${String(lifeFrom)} or more, the shortest life`, params: { atLeast: lifeFrom } };
    if (lifeTo < lifeFrom) return refuse(fault);
    const { used, leastPct, mostPct, ...due } = lifeUsedOf({ by, from: lifeFrom, to: lifeTo }, { dayCount: ageDays, hoursPerWeek, intensity });
    return ok({ used, usedLeastPct: percent(leastPct), usedMostPct: percent(mostPct), ...due });
  },
});
