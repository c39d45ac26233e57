import { defineOperation, field } from '#operation';
import { ok } from '#result';
import { z } from 'zod';
import { hammerLifeOf } from '../hammers/hammer-life.ts';

const hours = (describe: string) => field.number({ min: 0, describe });

/** What is left of a set of hammers by hours and by reshapings. */
export const hammerLifeOperation = defineOperation({
  name: 'hammer-life',
  input: z.strictObject({
    hoursPerWeek: field.number({ min: 0, max: 168, describe: 'Hours played a week' }),
    ageYears: field.number({ min: 0, max: 200, describe: 'Years since the hammers were new' }),
    reshapeCount: field.count({ max: 20, describe: 'Reshaped so far' }),
    reshapeHours: field.number({ above: 0, max: 100_000, describe: 'Hours from one reshaping to the next' }),
    mostReshapes: field.count({ max: 20, describe: 'Reshaped at most before they are replaced' }),
  }),
  output: z.strictObject({
    hoursPlayed: hours('Hours played so far'),
    toReshapeHours: hours('Hours until the next reshaping is due; 0 where it is due'),
    leftHours: hours('Hours until replacement, by hours or by reshapings, whichever ends first'),
    leftYears: hours('The same in years; left out where nobody plays').optional(),
    reshapesLeft: field.count({ describe: 'Reshapings left' }),
  }),
  formula: ['played = hours a week · 365.25/7 · years', 'left = min((most + 1)·h − played, (most − so far + 1)·h)'],
  sources: ['PRACTICE', 'OWN'],
  example: { hoursPerWeek: 10, ageYears: 6, reshapeCount: 1, reshapeHours: 2000, mostReshapes: 3 },
  run: (wear) => ok(hammerLifeOf(wear)),
});
