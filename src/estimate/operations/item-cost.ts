import { defineOperation, field } from '#operation';
import { z } from 'zod';
import { itemCostOf } from '../line-cost.ts';
import { costAnswer, costOfLines, lineName } from './cost-lines.ts';
import { currencyField, roundingField } from './money-fields.ts';

const priceMinor = field.minor({ min: 0, describe: 'Price of one' });
const quantity = field.number({ min: 0, max: 1_000_000, describe: 'How many, or how much of it' });

/** What parts, or work of others, cost line by line and in all. */
export const itemCostOperation = defineOperation({
  name: 'item-cost',
  input: z.strictObject({ items: z.array(z.strictObject({ name: lineName, quantity: quantity.default(1), priceMinor })).max(1000), currency: currencyField, rounding: roundingField }),
  output: costAnswer({ quantity, priceMinor }),
  formula: ['amount = quantity·price, rounded once', 'sum = Σ amount'],
  sources: ['OWN'],
  example: { items: [{ name: 'Tuning pins', quantity: 230.5, priceMinor: 95 }, { name: 'Moving', priceMinor: 68_000 }], currency: 'EUR' },
  run: ({ items, currency, rounding }) => costOfLines({ currency, rounding, path: 'items', lines: items.map((item) => ({ told: item, exact: itemCostOf(item) })) }),
});
