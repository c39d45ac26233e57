import { defineOperation, field } from '#operation';
import { ok, refuse } from '#result';
import { grams } from '#units';
import { z } from 'zod';
import { touchReadingsOf } from '../balance.ts';
import { frontWeightFor } from '../parts.ts';
import { fields } from '../schemas.ts';

/** Front weight a key needs for its balance weight, and the readings then to be expected. */
export const frontWeightTargetOperation = defineOperation({
  name: 'front-weight-target',
  input: z.strictObject({
    balanceWeightG: fields.balanceWeightG,
    hammerWeightG: fields.hammerWeightG,
    wippenWeightG: fields.wippenWeightG,
    keyRatio: fields.keyRatio,
    weightRatio: fields.weightRatio,
    helperSpringG: fields.helperSpringG.default(grams(0)),
    frictionG: fields.frictionG.optional(),
  }),
  output: z.strictObject({ frontWeightG: field.grams(), downWeightG: field.grams().optional(), upWeightG: field.grams().optional() }),
  formula: ['FW = R·SW + K·WW − S − BW', 'DW = BW + F', 'UW = BW − F'],
  sources: ['OWN', 'PRACTICE'],
  example: { balanceWeightG: 37.5, hammerWeightG: 9.2, wippenWeightG: 18, keyRatio: 0.511, weightRatio: 5.77, frictionG: 11.5 },
  run: ({ frictionG, ...key }) => {
    const frontWeightG = frontWeightFor(key);
    if (frictionG === undefined) return ok({ frontWeightG });
    if (frictionG > key.balanceWeightG) {
      return refuse({ code: 'order', path: 'frictionG', given: frictionG, allowed: `at most the balance weight, ${String(key.balanceWeightG)}, or the key would not return`, params: { reason: 'frictionAboveBalance', max: key.balanceWeightG } });
    }
    return ok({ frontWeightG, ...touchReadingsOf({ balanceWeightG: key.balanceWeightG, frictionG }) });
  },
});
