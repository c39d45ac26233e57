import { defineOperation, field } from '#operation';
import { ok } from '#result';
import { z } from 'zod';
import { leverRatiosOf } from '../levers.ts';
import { fields } from '../schemas.ts';

/** Key, wippen, hammer and action ratio from the six lever arms. */
export const leverRatiosOperation = defineOperation({
  name: 'lever-ratios',
  input: fields.levers,
  output: z.strictObject({ keyRatio: field.ratio(), wippenRatio: field.ratio(), hammerRatio: field.ratio(), actionRatio: field.ratio() }),
  formula: ['K = b/a', 'W = w_j/w_c', 'H = L/r', 'R = K·W·H'],
  sources: ['OWN'],
  example: { keyFrontMm: 225, keyBackMm: 115, wippenHeelMm: 65, wippenJackMm: 96, rollerMm: 17, hammerMm: 130 },
  run: (levers) => ok(leverRatiosOf(levers)),
});
