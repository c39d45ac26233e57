import { defineOperation, field } from '#operation';
import { andThen, ok, refuse } from '#result';
import { grams } from '#units';
import { z } from 'zod';
import { balanceWeightOf, frictionOf, loadProportionalBalanceOf, thresholdCorrectedFrictionOf } from '../balance.ts';
import { checkOrder, fields } from '../schemas.ts';

/** Balance weight and friction of one key from its down and up weight. */
export const touchWeightOperation = defineOperation({
  name: 'touch-weight',
  input: z.strictObject({
    downWeightG: fields.downWeightG,
    upWeightG: fields.upWeightG,
    stepG: fields.stepG.optional(),
    frontWeightG: fields.frontWeightG.optional(),
  }),
  output: z.strictObject({
    balanceWeightG: field.grams(),
    frictionG: field.grams(),
    correctedFrictionG: field.grams().optional(),
    loadProportionalBalanceG: field.grams().optional(),
    balanceModelErrorG: field.grams({ describe: 'Balance weight less the load-proportional one: how far the model of friction matters' }).optional(),
  }),
  formula: ['BW = (DW + UW)/2', 'F = (DW − UW)/2', 'F′ = F − q/2', 'BW′ = √((DW + FW)(UW + FW)) − FW'],
  sources: ['PRACTICE', 'OWN'],
  example: { downWeightG: 49, upWeightG: 26, stepG: 1, frontWeightG: 25 },
  run: (input) => andThen(checkOrder(input), ({ downWeightG, upWeightG, stepG, frontWeightG }) => {
    const readings = { downWeightG, upWeightG };
    const balanceWeightG = balanceWeightOf(readings);
    const answer = {
      balanceWeightG,
      frictionG: frictionOf(readings),
      ...(stepG === undefined ? {} : { correctedFrictionG: thresholdCorrectedFrictionOf({ ...readings, stepG }) }),
    };
    if (frontWeightG === undefined) return ok(answer);
    const loadProportionalBalanceG = loadProportionalBalanceOf({ ...readings, frontWeightG });
    if (loadProportionalBalanceG === undefined) return refuse({ code: 'range', path: 'frontWeightG', given: frontWeightG, allowed: `at least ${String(0 - upWeightG)}, minus the up weight`, params: { reason: 'frontBelowUp', min: 0 - upWeightG } });
    return ok({ ...answer, loadProportionalBalanceG, balanceModelErrorG: grams(balanceWeightG - loadProportionalBalanceG) });
  }),
});
