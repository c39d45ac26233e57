import { LARGEST_MINOR } from '#money';
import { defineOperation, field } from '#operation';
import { andThen, ok, refuse } from '#result';
import { z } from 'zod';
import { breakEvenSaleOf, taxOfSale } from '../decide/break-even.ts';
import { cashFlowsField, monthField, rateField } from './flow-fields.ts';
import { currencyField, knownCurrency, roundingField } from './money-fields.ts';

/** The lowest price at which a restoration does not lose. */
export const breakEvenSaleOperation = defineOperation({
  name: 'break-even-sale',
  input: z.strictObject({
    cashFlows: cashFlowsField,
    saleMonth: monthField,
    annualRatePct: rateField,
    tax: z.enum(['margin', 'ordinary', 'none']).describe('Tax on the margin over the purchase, on the whole price, or none'),
    ratePct: field.percent({ min: 0, max: 100, describe: 'Rate of tax' }),
    purchaseMinor: field.minor({ min: 0, describe: 'What it was bought for; restoration is no part of it' }),
    currency: currencyField,
    rounding: roundingField,
  }),
  output: z.strictObject({
    saleMinor: field.minor({ min: 0, describe: 'Lowest price, tax included' }),
    taxMinor: field.minor({ min: 0, describe: 'Tax in that price' }),
  }),
  formula: ['least P with Σ CFₜ/(1 + r)^(t/12) + (P − tax(P))/(1 + r)^(s/12) ≥ 0', 'tax(P): margin max(0, P − purchase)·r/(100 + r), ordinary P·r/(100 + r)'],
  sources: ['BREALEY-MYERS', 'VATMARG02300', 'EU-2006-112'],
  example: { cashFlows: [{ month: 0, amountMinor: -850_000 }, { month: 6, amountMinor: -700_000 }], saleMonth: 14, annualRatePct: 10, tax: 'margin', ratePct: 20, purchaseMinor: 850_000, currency: 'GBP', rounding: 'half-up' },
  run: (question) => andThen(knownCurrency(question.currency), () => {
    const saleMinor = breakEvenSaleOf(question);
    if (saleMinor === null) return refuse({ code: 'unreachable', path: 'cashFlows', given: question.cashFlows.length, allowed: `a price of at most ${String(LARGEST_MINOR)} smallest units would have to do`, params: { reason: 'noPrice' } });
    return ok({ saleMinor, taxMinor: taxOfSale(saleMinor, question) });
  }),
});
