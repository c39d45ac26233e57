import { defineOperation, field } from '#operation';
import { map } from '#result';
import { z } from 'zod';
import { MOST_NOTES, fields, offsetShape } from '../schemas.ts';
import { SUSTAIN_LAMBDA, sustainLooks, sustainMapOf } from '../sustain.ts';

/** Where keys ring short, and what to look at there. */
export const sustainMapOperation = defineOperation({
  name: 'sustain-map',
  input: z.strictObject({
    notes: z.array(z.strictObject({
      key: fields.key, decayS: fields.decayS,
      uncertaintyS: field.number({ min: 0, max: 1000, describe: 'Standard uncertainty of the time' }).optional(),
      bearingDeg: field.degrees({ min: -90, max: 90, describe: 'Down bearing of the note, front and rear together, if measured' }).optional(),
    })).min(1).max(MOST_NOTES),
    humidityPct: field.percent({ min: 0, max: 100, describe: 'Relative humidity when it was recorded' }).optional(),
    shortPct: field.percent({ min: 1, max: 99, describe: 'Keys below this share of the curve ring short' }),
    lambda: fields.lambda(SUSTAIN_LAMBDA),
  }),
  output: z.strictObject({
    keys: z.array(z.strictObject({ ...offsetShape, ratio: field.number({ describe: 'Value over curve' }) })),
    scatter: field.number({ describe: 'Robust standard deviation of the logarithm of the ratio' }),
    short: z.array(z.strictObject({
      fromKey: field.count(), toKey: field.count(), medianRatio: field.number(),
      lookAt: z.array(z.enum(sustainLooks)).describe('Things to look at; none is claimed to be the cause'),
      bearingDeg: field.degrees({ describe: 'Median of the stretch' }).optional(),
      bearingElsewhereDeg: field.degrees({ describe: 'Median of the other keys' }).optional(),
    })).describe('Stretches of three keys and more'),
  }),
  formula: ['curve through ln T as in tone-evenness, stiffer', 'short: T/curve below the share, three neighbours and more', 'bearing low: 0 or less, or below half of what the other keys have'],
  sources: ['EILERS-WHITTAKER', 'TUKEY-BIWEIGHT', 'PRACTICE'],
  example: { notes: [[50, 6, 1.2], [51, 5.9, 1.1], [52, 5.7, 1.3], [53, 5.6, 1.2], [54, 2.6, 0.2], [55, 2.4, 0.1], [56, 2.5, 0.2], [57, 5.1, 1.2], [58, 5, 1.1], [59, 4.9, 1.2], [60, 4.8, 1.1], [61, 4.6, 1.2]].map(([key, decayS, bearingDeg]) => ({ key, decayS, bearingDeg })), humidityPct: 45, shortPct: 70 },
  run: ({ notes, humidityPct, shortPct, lambda }) => map(sustainMapOf(notes, { climate: { humidityPct }, shortRatio: shortPct / 100, lambda }), ({ keys, scatter, short }) => ({
    keys: [...keys], scatter, short: short.map(({ lookAt, ...stretch }) => ({ ...stretch, lookAt: [...lookAt] })),
  })),
});
