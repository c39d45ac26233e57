import { minorFrom, splitMinor } from '#money';
import { defineOperation, field } from '#operation';
import { all, map, refuse } from '#result';
import { z } from 'zod';

/** Payments by stages that sum exactly to the total. */
export const stagePaymentsOperation = defineOperation({
  name: 'stage-payments',
  input: z.strictObject({
    totalMinor: field.minor({ describe: 'What is to be paid in all' }),
    shares: z.array(field.number({ min: 0, max: 1e9, describe: 'Share of each stage; shares need not sum to one' })).min(1).max(1000),
  }),
  output: z.strictObject({ amountsMinor: z.array(field.minor({ describe: 'Payment of each stage, in their order; the sum is the total' })) }),
  formula: ['aᵢ = ⌊T·wᵢ/Σw⌋', 'the units left go one each to the largest remainders, the first on a tie', 'Σ aᵢ = T'],
  sources: ['HAMILTON-1792'],
  example: { totalMinor: 1_850_001, shares: [30, 40, 30] },
  run: ({ totalMinor, shares }) => {
    if (shares.every((share) => share === 0)) return refuse({ code: 'range', path: 'shares', given: shares, allowed: 'at least one share above 0', params: { reason: 'noShare' } });
    return map(all(splitMinor(totalMinor, shares).map((part, index) => minorFrom(part, `shares[${String(index)}]`))), (amountsMinor) => ({ amountsMinor: [...amountsMinor] }));
  },
});
