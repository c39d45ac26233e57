import { minorFrom, taxOnMargin } from '#money';
import { defineOperation, field } from '#operation';
import { all, andThen, map } from '#result';
import { z } from 'zod';
import { currencyField, knownCurrency, roundingField } from './money-fields.ts';

/** Tax on the margin of a second-hand sale. */
export const marginVatOperation = defineOperation({
  name: 'margin-vat',
  input: z.strictObject({
    purchaseMinor: field.minor({ min: 0, describe: 'What it was bought for; repairs and parts are no part of it' }),
    saleMinor: field.minor({ min: 0, describe: 'What it is sold for, tax included' }),
    ratePct: field.percent({ min: 0, max: 100, describe: 'Rate of tax' }),
    currency: currencyField,
    rounding: roundingField,
  }),
  output: z.strictObject({
    marginMinor: field.minor({ describe: 'Sale less purchase; below nought where it was sold at a loss' }),
    vatMinor: field.minor({ min: 0, describe: 'Tax held in the margin, never below nought' }),
  }),
  formula: ['margin = sale − purchase', 'VAT = max(0, margin)·r/(100 + r), rounded once'],
  sources: ['VATMARG02300', 'EU-2006-112', 'VATREC12010'],
  example: { purchaseMinor: 150_000, saleMinor: 200_000, ratePct: 20, currency: 'GBP', rounding: 'half-up' },
  run: (sale) => andThen(knownCurrency(sale.currency), () => {
    const { margin, tax } = taxOnMargin(sale);
    return map(all([minorFrom(margin, 'saleMinor'), minorFrom(tax, 'saleMinor')]), ([marginMinor = 0, vatMinor = 0]) => ({ marginMinor, vatMinor }));
  }),
});
