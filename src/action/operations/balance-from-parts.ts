import { defineOperation, field } from '#operation';
import { ok } from '#result';
import { grams } from '#units';
import { z } from 'zod';
import { leverRatiosOf } from '../levers.ts';
import { balanceFromPartsOf } from '../parts.ts';
import { fields } from '../schemas.ts';

/** Balance weight that weighed parts and measured arms lead one to expect. */
export const balanceFromPartsOperation = defineOperation({
  name: 'balance-from-parts',
  input: z.strictObject({
    levers: fields.levers,
    hammerWeightG: fields.hammerWeightG,
    wippenWeightG: fields.wippenWeightG,
    frontWeightG: fields.frontWeightG,
    helperSpringG: fields.helperSpringG.default(grams(0)),
    weightRatio: field.ratio({ min: 0.01, max: 100, describe: 'By weights; given, it stands for the ratio by distance' }).optional(),
    frictionG: field.grams({ min: 0, max: 1000, describe: 'Given, down and up weight are answered too' }).optional(),
  }),
  output: z.strictObject({ balanceWeightG: field.grams(), keyRatio: field.ratio(), actionRatio: field.ratio(), downWeightG: field.grams().optional(), upWeightG: field.grams().optional() }),
  formula: ['BW = R·SW + K·WW − FW − S', 'K = b/a', 'R = (b/a)·(w_j/w_c)·(L/r), or by weights', 'DW = BW + F, UW = BW − F'],
  sources: ['OWN'],
  example: {
    levers: { keyFrontMm: 225, keyBackMm: 115, wippenHeelMm: 65, wippenJackMm: 96, rollerMm: 17, hammerMm: 130 },
    hammerWeightG: 9.2, wippenWeightG: 18, frontWeightG: 25,
  },
  run: ({ levers, weightRatio, frictionG, ...parts }) => {
    const { keyRatio, actionRatio } = leverRatiosOf(levers);
    const balanceWeightG = balanceFromPartsOf({ ...parts, keyRatio, actionRatio: weightRatio ?? actionRatio });
    return ok({ balanceWeightG, keyRatio, actionRatio, ...(frictionG === undefined ? {} : { downWeightG: grams(balanceWeightG + frictionG), upWeightG: grams(balanceWeightG - frictionG) }) });
  },
});
