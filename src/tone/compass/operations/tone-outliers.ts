import { defineOperation, field } from '#operation';
import { map } from '#result';
import { z } from 'zod';
import { USUAL_LAMBDA } from '../along-keys.ts';
import { outlierFigures, toneOutliersOf } from '../outliers.ts';
import { MOST_NOTES, fields } from '../schemas.ts';

const dB = (describe: string) => field.number({ min: -300, max: 300, describe }).optional();

/** Keys that buzz, knock, beat or spread more than their neighbours. */
export const toneOutliersOperation = defineOperation({
  name: 'tone-outliers',
  input: z.strictObject({
    notes: z.array(z.strictObject({
      key: fields.key,
      betweenPartialsDb: dB('Sound between the partials while the note rings'),
      attackNoiseDb: dB('Noise of the attack'),
      beatDepthDb: dB('Depth of the strongest beat'),
      unisonSpreadCents: field.cents({ min: 0, max: 1000, describe: 'Spread of the unison' }).optional(),
    })).min(6).max(MOST_NOTES),
    lambda: fields.lambda(USUAL_LAMBDA),
  }),
  output: z.strictObject({
    standingOut: z.array(z.strictObject({
      key: field.count(), figure: z.enum(outlierFigures), value: field.number({ describe: 'In the unit of the figure' }), curve: field.number(), offset: field.number(),
      scatters: field.number({ describe: 'Offset in robust standard deviations of the neighbours' }),
    })).describe('Most striking first'),
  }),
  formula: ['curve as in tone-evenness, for each figure that six keys have', 'stands out: offset > max(3.5·s, least), least 3 dB or 0.5 ct'],
  sources: ['EILERS-WHITTAKER', 'TUKEY-BIWEIGHT', 'IGLEWICZ-HOAGLIN', 'PRACTICE'],
  example: { notes: [-40, -41, -39, -40, -22, -42, -41, -40].map((betweenPartialsDb, index) => ({ key: 40 + index, betweenPartialsDb })) },
  run: ({ notes, lambda }) => map(toneOutliersOf(notes, lambda), (standingOut) => ({ standingOut: [...standingOut] })),
});
