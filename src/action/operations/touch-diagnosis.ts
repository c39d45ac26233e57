import { defineOperation, field } from '#operation';
import { andThen, ok } from '#result';
import { type Grams, type Ratio, grams, ratio } from '#units';
import { z } from 'zod';
import type { KeyDoubt } from '../deviation.ts';
import { diagnoseKey } from '../key-diagnosis.ts';
import { checkOrder, fields, weighedKeyShape } from '../schemas.ts';
import { balanceUncertaintyOf, weighingUncertaintyOf } from '../uncertainty.ts';

const inputSchema = z.strictObject({
  ...weighedKeyShape,
  helperSpringG: fields.helperSpringG.default(grams(0)),
  target: z.strictObject({
    weightRatio: fields.weightRatio,
    hammerWeightG: fields.hammerWeightG,
    wippenWeightG: fields.wippenWeightG,
    frontWeightG: fields.frontWeightG,
    frictionG: fields.frictionG,
  }).describe('The key as it ought to be'),
  keyFrictionG: field.grams({ min: 0, max: 10_000, describe: 'Friction of the key alone, if measured' }).optional(),
  stepG: fields.stepG.optional(),
  repeatabilityG: fields.repeatabilityG.optional(),
  scaleUncertaintyG: fields.scaleUncertaintyG.optional(),
  keyRatioUncertainty: fields.keyRatioUncertainty.optional(),
});

const causeNames = [
  'frictionHigh', 'frictionLow', 'ratioHigh', 'ratioLow', 'wippenHeavy', 'wippenLight', 'hammerHeavy', 'hammerLight', 'frontLight', 'frontHeavy', 'cancelling',
] as const;

/** Why a key is heavier or lighter than it should be, and what to do about it in order. */
export const touchDiagnosisOperation = defineOperation({
  name: 'touch-diagnosis',
  input: inputSchema,
  output: z.strictObject({
    downWeightChangeG: field.grams({ describe: 'Down weight less its target; the sum of the shares' }),
    weightRatio: field.ratio(),
    shares: z.strictObject({ ratioG: field.grams(), hammerG: field.grams(), wippenG: field.grams(), frontG: field.grams(), frictionG: field.grams() }),
    causes: z.array(z.strictObject({ cause: z.enum(causeNames), amountG: field.grams(), uncertaintyG: field.grams({ describe: 'Expanded uncertainty (k = 2)' }).optional() })),
    remedies: z.array(z.string()).describe('In the order of the work: friction, ratio and wippen, hammer, lead'),
    withinUncertainty: z.array(z.enum(causeNames)).describe('Above 1.5 g but not above its own uncertainty: weigh again rather than act'),
    cancelling: z.boolean().describe('Faults hide each other: the down weight is as it should be, the key is not'),
  }),
  formula: [
    'DW = R·SW + K·WW − FW − S + F',
    'd_R = ½(SW + SW*)·(R − R*)',
    'd_SW = ½(R + R*)·(SW − SW*)',
    'd_WW = K·(WW − WW*)',
    'd_FW = FW* − FW',
    'd_F = F − F*',
    'cause: |d| > max(1.5 g, 2·u(d))',
  ],
  sources: ['OWN', 'SHAPLEY-1953', 'JCGM-100', 'PRACTICE'],
  example: {
    downWeightG: 49, upWeightG: 13, frontWeightG: 30.2, hammerWeightG: 9, wippenWeightG: 18, keyRatio: 0.511,
    target: { weightRatio: 5.77, hammerWeightG: 9, wippenWeightG: 18, frontWeightG: 24.8, frictionG: 12 },
    stepG: 1, repeatabilityG: 0.7, scaleUncertaintyG: 0.1,
  },
  run: (input) => andThen(checkOrder(input), ({ target, keyFrictionG, stepG, repeatabilityG, scaleUncertaintyG, keyRatioUncertainty, ...key }) => {
    const doubt = doubtOf({ stepG, repeatabilityG, scaleUncertaintyG, keyRatioUncertainty });
    const found = diagnoseKey({ key, target, ...(doubt === undefined ? {} : { doubt }), ...(keyFrictionG === undefined ? {} : { keyFrictionG }) });
    return ok({
      downWeightChangeG: found.downWeightChangeG,
      weightRatio: found.weightRatio,
      shares: found.shares,
      causes: [...found.causes],
      remedies: [...found.remedies],
      withinUncertainty: [...found.withinUncertainty],
      cancelling: found.cancelling,
    });
  }),
});

interface StatedDoubt {
  readonly stepG: Grams | undefined;
  readonly repeatabilityG: Grams | undefined;
  readonly scaleUncertaintyG: Grams | undefined;
  readonly keyRatioUncertainty: Ratio | undefined;
}

/** Nothing stated: nothing claimed. Once something is, what was left out counts as nought. */
function doubtOf({ stepG, repeatabilityG, scaleUncertaintyG, keyRatioUncertainty }: StatedDoubt): KeyDoubt | undefined {
  if (stepG === undefined && repeatabilityG === undefined && scaleUncertaintyG === undefined && keyRatioUncertainty === undefined) return undefined;
  const each = weighingUncertaintyOf({ stepG: stepG ?? grams(0), repeatabilityG: repeatabilityG ?? grams(0) });
  return {
    balanceWeightUncertaintyG: balanceUncertaintyOf({ downWeightUncertaintyG: each, upWeightUncertaintyG: each }),
    scaleUncertaintyG: scaleUncertaintyG ?? grams(0),
    keyRatioUncertainty: keyRatioUncertainty ?? ratio(0),
  };
}
