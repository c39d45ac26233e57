import { taxInGross, taxOnMargin } from '#money';
import { type PublishedFigure, exactly, figuresFrom } from '#sources';
import { shopCardSchema } from '#workshop';
import { type JobPrice, jobPriceOf } from './job-price.ts';
import { stockBookOf } from './stock-book.ts';
import { taxPeriodOf } from './tax-period.ts';

const margin = (purchaseMinor: number, saleMinor: number) => (): number => Number(taxOnMargin({ purchaseMinor, saleMinor, ratePct: 20, rounding: 'half-up' }).tax) / 100;
/** Tax of the stock book's one quarter, of a piano bought and sold in Great Britain. */
const booked = (purchaseMinor: number, saleMinor: number) => (): number => {
  const kept = { workshopId: 'shop', at: '', changedAt: '', sequence: 0, currency: 'GBP', details: null };
  const cards = [
    { kind: 'acquisition', id: 'a', ...kept, number: 1, on: '2025-01-02', eligible: true, priceMinor: purchaseMinor },
    { kind: 'sale', id: 's', ...kept, acquisition: 'a', on: '2025-02-03', place: 'GB', priceMinor: saleMinor },
  ].map((card) => shopCardSchema.parse(card));
  return (stockBookOf(cards).totals[0]?.taxMinor ?? NaN) / 100;
};
const priced = (name: keyof JobPrice): number => {
  const price = jobPriceOf({ labourMinor: 264_400, partsMinor: 21_898, outsideMinor: 68_000, contingencyPct: 5, overheadPct: 10, pricing: 'markup', pricingPct: 20, purchaseMinor: 0, regime: 'ordinary', ratePct: 19, rounding: 'half-up' });
  return price.ok ? price.value[name] / 100 : NaN;
};
const left = (tax: number) => 32_000 - 8500 - 7000 - tax;
/** The month the quarter of a day ends in, where tax years begin in a month. */
const quarterEnd = (day: string, fromMonth: number) => (): number => Number(taxPeriodOf(day, 'quarter', fromMonth).until.slice(5, 7));
const toTheUnit = { ...exactly, because: 'to the last unit' };

/** Figures of money that others worked out, beside this program's. */
export const publishedMoneyFigures: readonly PublishedFigure[] = [
  ...figuresFrom('GOV-UK-MARGIN', 'worked figures of the margin scheme', toTheUnit,
    ['VAT, GBP', 'bought 1500, sold 2000, 20 %', 83.33, margin(150_000, 200_000)],
    ['VAT, GBP', 'bought 10000, sold 12000, 20 %', 333.33, margin(1_000_000, 1_200_000)],
    ['VAT in the stock book, GBP', 'bought 1500, sold 2000, at the rate of the day', 83.33, booked(150_000, 200_000)],
    ['VAT in the stock book, GBP', 'bought 10000, sold 12000, at the rate of the day', 333.33, booked(1_000_000, 1_200_000)]),
  ...figuresFrom('DMBM530020', 'stagger groups of VAT quarters', { ...exactly, because: 'whole months' },
    ...([[1, [3, 6, 9, 12]], [2, [4, 7, 10, 1]], [3, [5, 8, 11, 2]]] as const).flatMap(([stagger, ends]) => ends.map((end) =>
      ['last month of the quarter', `stagger ${String(stagger)}, tax year from month ${String((end % 3) + 1)}, a sale on the 15th of month ${String(end)}`, end, quarterEnd(`2031-${String(end).padStart(2, '0')}-15`, (end % 3) + 1)] as const))),
  ...figuresFrom('OWN', 'bought 8500, restored for 7000 net, sold for 32000, 20 %, worked by hand', toTheUnit,
    ['VAT on the margin, GBP', '(32000 − 8500)/6', 3916.67, margin(850_000, 3_200_000)],
    ['ordinary VAT, GBP', '32000/6', 5333.33, () => Number(taxInGross(3_200_000, 20, 'half-up')) / 100],
    ['left with the margin scheme, GBP', 'no part of the restoration in the purchase price', 12_583.33, () => left(margin(850_000, 3_200_000)())],
    ['left with ordinary tax, GBP', 'tax on the whole price', 11_166.67, () => Math.round(100 * left(Number(taxInGross(3_200_000, 20, 'half-up')) / 100)) / 100],
    ['left with no tax, GBP', 'as for an export', 16_500, () => left(0)]),
  // 3542.98 · 5 % = 177.149; 3720.13 · 10 % = 372.013; 4092.14 · 1.2 = 4910.568; · 19 % = 933.0083, worked by hand
  ...figuresFrom('OWN', 'work 2644.00, parts 218.98, work of others 680.00, 5 % doubt, 10 % overhead, 20 % on top, 19 % tax, worked by hand', toTheUnit,
    ...([['added for doubt', 177.15, 'contingencyMinor'], ['overhead', 372.01, 'overheadMinor'], ['cost', 4092.14, 'costMinor'], ['price before tax', 4910.57, 'netMinor'], ['tax', 933.01, 'taxMinor'], ['total', 5843.58, 'totalMinor']] as const)
      .map(([what, expected, name]) => [`${what}, EUR`, 'each step rounded once', expected, (): number => priced(name)] as const)),
];
