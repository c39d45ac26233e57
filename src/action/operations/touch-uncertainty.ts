import { defineOperation, field } from '#operation';
import { andThen, ok } from '#result';
import { grams, ratio } from '#units';
import { z } from 'zod';
import { balanceWeightOf } from '../balance.ts';
import { checkOrder, fields, weighedKeyShape } from '../schemas.ts';
import { balanceUncertaintyOf, ratioUncertaintyOf, weighingUncertaintyOf } from '../uncertainty.ts';

/** How sure the readings of one key are, and the ratio worked out from them. */
export const touchUncertaintyOperation = defineOperation({
  name: 'touch-uncertainty',
  input: z.strictObject({
    stepG: fields.stepG,
    repeatabilityG: fields.repeatabilityG,
    scaleUncertaintyG: fields.scaleUncertaintyG,
    ...weighedKeyShape,
    keyRatioUncertainty: fields.keyRatioUncertainty,
    helperSpringG: fields.helperSpringG.default(grams(0)),
    repeats: field.count({ min: 1, max: 1000, describe: 'Weighings that each down and up weight is the mean of' }).default(1),
  }),
  output: z.strictObject({
    downWeightUncertaintyG: field.grams({ describe: 'Standard uncertainty (k = 1), the same for the up weight' }),
    balanceWeightUncertaintyG: field.grams({ describe: 'Standard uncertainty (k = 1)' }),
    frictionUncertaintyG: field.grams({ describe: 'Standard uncertainty (k = 1)' }),
    weightRatio: field.ratio(),
    weightRatioUncertainty: field.ratio({ describe: 'Standard uncertainty (k = 1)' }),
    weightRatioExpandedUncertainty: field.ratio({ describe: 'Expanded uncertainty (k = 2), about 95 %' }),
    shares: z.strictObject({
      balanceWeight: field.ratio(),
      frontWeight: field.ratio(),
      hammerWeight: field.ratio(),
      wippenWeight: field.ratio(),
      keyRatio: field.ratio(),
    }).describe('Parts of the variance of the ratio, adding up to 1'),
  }),
  formula: [
    'u(DW)² = u(UW)² = q²/12 + s²/n',
    'u(BW) = u(F) = √(u(DW)² + u(UW)²)/2',
    'R = (BW + FW + S − K·WW)/SW',
    'u(R)² = [u(BW)² + u(FW)² + K²·u(WW)² + WW²·u(K)² + R²·u(SW)²]/SW²',
  ],
  sources: ['JCGM-100', 'OWN'],
  example: {
    stepG: 1, repeatabilityG: 0.7, scaleUncertaintyG: 0.1, downWeightG: 49, upWeightG: 26, frontWeightG: 25,
    hammerWeightG: 9.9, wippenWeightG: 18, keyRatio: 0.51, keyRatioUncertainty: 0.004,
  },
  run: (input) => andThen(checkOrder(input), ({ stepG, repeatabilityG, repeats, ...key }) => {
    const each = weighingUncertaintyOf({ stepG, repeatabilityG, repeats });
    const balance = balanceUncertaintyOf({ downWeightUncertaintyG: each, upWeightUncertaintyG: each });
    const { weightRatio, weightRatioUncertainty, shares } = ratioUncertaintyOf({ ...key, balanceWeightG: balanceWeightOf(key), balanceWeightUncertaintyG: balance });
    return ok({
      downWeightUncertaintyG: each,
      balanceWeightUncertaintyG: balance,
      frictionUncertaintyG: balance,
      weightRatio,
      weightRatioUncertainty,
      weightRatioExpandedUncertainty: ratio(2 * weightRatioUncertainty),
      shares,
    });
  }),
});
