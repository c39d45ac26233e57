import { defineOperation, field } from '#operation';
import { andThen, refuse } from '#result';
import { taxRegimes } from '#workshop';
import { z } from 'zod';
import { jobPriceOf } from '../job-price.ts';
import { currencyField, knownCurrency, roundingField } from './money-fields.ts';

const asked = (describe: string) => field.minor({ min: 0, describe });
const exact = (describe: string) => field.number({ describe: `${describe}, before rounding` });
const share = (max: number, describe: string) => field.number({ min: 0, max, describe });
const hours = (describe: string) => field.number({ min: 0, max: 100_000_000, describe });

/** From the direct cost of a job to what is asked for it. */
export const jobPriceOperation = defineOperation({
  name: 'job-price',
  input: z.strictObject({
    labourMinor: asked('Own work'), partsMinor: asked('Parts'), outsideMinor: asked('Work of others'),
    contingencyPct: share(1000, 'Share of the direct cost added for doubt').default(0),
    doubt: z.strictObject({ expectedH: hours('Hours to be expected'), withinH: hours('Hours the job stays within, as far as it is to be sure'), rateMinor: asked('Price of an hour') }).optional(),
    overheadPct: share(1000, 'Overhead on direct cost and doubt').default(0),
    pricing: z.enum(['markup', 'margin']).default('markup').describe('Whether profit is so much on top of the cost, or so much of the price'),
    pricingPct: share(1000, 'How much').default(0),
    purchaseMinor: asked('What the instrument was bought for; 0 where it is a customer’s').default(0),
    regime: z.enum(taxRegimes).describe('How it is taxed; which regime may be used is for an accountant to say'),
    ratePct: share(100, 'Rate of tax').default(0),
    currency: currencyField, rounding: roundingField,
  }),
  output: z.strictObject({
    addedH: field.number({ describe: 'Hours added for doubt, to a hundredth upwards' }),
    contingencyExactMinor: exact('What is added for doubt'), contingencyMinor: field.minor({ describe: 'What is added for doubt' }),
    overheadExactMinor: exact('Overhead'), overheadMinor: field.minor({ describe: 'Overhead' }),
    costMinor: field.minor({ describe: 'Direct cost, doubt and overhead' }),
    netExactMinor: exact('Price before tax'), netMinor: field.minor({ describe: 'Price before tax, the instrument left out' }),
    profitMinor: field.minor({ describe: 'Price before tax less cost' }),
    taxExactMinor: exact('Tax'), taxMinor: field.minor({ describe: 'Tax' }),
    totalMinor: field.minor({ describe: 'What is asked for: instrument, price and tax' }),
  }),
  formula: [
    'h = ⌈100·max(0, P − μ)⌉/100; doubt = direct·c/100 + rate·h', 'overhead = (direct + doubt)·o/100; cost = direct + doubt + overhead',
    'price = cost·(1 + m/100), or cost/(1 − m/100) for a margin', 'tax: ordinary (instrument + price)·r/100; margin scheme price·r/100; else 0', 'total = instrument + price + tax; each step rounded once, sums exact',
  ],
  sources: ['OWN', 'EU-2006-112', 'VATMARG02300'],
  example: { labourMinor: 264_400, partsMinor: 21_898, outsideMinor: 68_000, contingencyPct: 5, overheadPct: 10, pricing: 'markup', pricingPct: 20, regime: 'ordinary', ratePct: 19, currency: 'EUR' },
  run: ({ currency, ...question }) => {
    if (question.pricing === 'margin' && question.pricingPct >= 100) return refuse({ code: 'range', path: 'pricingPct', given: question.pricingPct, allowed: 'less than 100 for a margin on the price', params: { below: 100 } });
    return andThen(knownCurrency(currency), () => jobPriceOf(question));
  },
});
