import { currencyOf, roundings } from '#money';
import type { Issue } from '#result';
import { z } from 'zod';

const id = z.string().regex(/^[\w-]{1,40}$/u);
const words = z.string().trim().min(1).max(300);
/** Whole smallest units of the currency of the estimate. */
const minor = z.number().int().min(0);
const pct = z.number().min(0).max(1000);
const hours = z.number().min(0).max(100_000);
const day = z.iso.date();
const leadDays = z.number().int().min(0).max(3650).nullable().default(null);
const supplier = z.string().trim().max(120).default('');
const shared = { id, words, ways: z.array(id).max(8) };

/** Work by three points. `chancePct` below 100: a branch for damage that may be hidden. `actualH`: what it took, once it is done. */
const labourLine = z.strictObject({
  kind: z.literal('labour'), ...shared, operation: z.string().trim().max(60).default(''), low: hours, likely: hours, high: hours,
  chancePct: z.number().min(0).max(100).default(100), rateMinor: minor.nullable().default(null), actualH: hours.nullable().default(null),
});
const partLine = z.strictObject({ kind: z.literal('part'), ...shared, priceMinor: minor, quantity: z.number().gt(0).max(1_000_000).default(1), leadDays, supplier });
const outsideLine = z.strictObject({ kind: z.literal('outside'), ...shared, priceMinor: minor, leadDays, supplier });

/** One line of an estimate: work, a part, or work of others. `ways` names the alternatives it belongs to. */
export const estimateLineSchema = z.discriminatedUnion('kind', [labourLine, partLine, outsideLine]);
export type EstimateLine = z.output<typeof estimateLineSchema>;
export type LabourLine = z.output<typeof labourLine>;

/** One way with the instrument. `saleMinor`: what it would sell for, tax included; null where it is work for a customer. */
const alternative = z.strictObject({ id, words, saleMinor: minor.nullable().default(null), months: z.number().int().min(0).max(600).default(0) });
export type Alternative = z.output<typeof alternative>;

/** How tax is dealt with. Which regime may be used is for an accountant to say. */
export const taxRegimes = ['ordinary', 'margin', 'export', 'none'] as const;
export type TaxRegime = (typeof taxRegimes)[number];
const tax = z.strictObject({ regime: z.enum(taxRegimes), ratePct: z.number().min(0).max(100), asOf: day.nullable().default(null), source: z.string().max(300).default('') });

/** What a job is reckoned to take and to cost, in the ways it could be done. One for each stay; money in whole smallest units. */
export const estimateSchema = z.strictObject({
  currency: z.string().length(3),
  rounding: z.enum(roundings).default('half-up'),
  /** Price of an hour at the bench. */
  rateMinor: minor,
  /** What an hour at the bench is paid out with, for the decision; 0 where it is one's own. */
  wageMinor: minor.default(0),
  owner: z.enum(['customer', 'shop']).default('customer'),
  purchaseMinor: minor.nullable().default(null),
  purchasedOn: day.nullable().default(null),
  overheadPct: pct.default(0),
  contingency: z.strictObject({ kind: z.enum(['none', 'pct', 'p80', 'p90']), pct: pct.default(0) }),
  pricing: z.strictObject({ kind: z.enum(['markup', 'margin']), pct }),
  tax,
  correlation: z.number().min(0).max(1).default(0.3),
  annualRatePct: z.number().min(-50).max(1000).default(0),
  alternatives: z.array(alternative).min(1).max(8),
  lines: z.array(estimateLineSchema).max(400),
  remark: z.string().max(2000).default(''),
});
export type Estimate = z.output<typeof estimateSchema>;
export type EstimateDraft = z.input<typeof estimateSchema>;

/** What the schema cannot say: a currency in use, hours that rise, ids that are there once, ways that exist, a margin below the whole price. */
export function estimateIssues({ currency, alternatives, lines, pricing, owner, purchaseMinor }: Estimate): readonly Issue[] {
  const ways = new Set(alternatives.map((way) => way.id));
  return [
    ...(currencyOf(currency) === currency ? [] : [{ code: 'choice', path: 'currency', given: currency, allowed: 'a currency code of ISO 4217 in use, such as EUR', params: { reason: 'currency' } } as const]),
    ...(pricing.kind === 'margin' && pricing.pct >= 100 ? [{ code: 'range', path: 'pricing.pct', given: pricing.pct, allowed: 'less than 100 for a margin on the price', params: { below: 100 } } as const] : []),
    ...(owner === 'shop' && purchaseMinor === null ? [{ code: 'required', path: 'purchaseMinor', given: null, allowed: 'what the instrument was bought for', params: { reason: 'purchase' } } as const] : []),
    ...repeated(alternatives, 'alternatives'),
    ...repeated(lines, 'lines'),
    ...lines.flatMap((line, index) => [...hourIssues(line, `lines[${String(index)}]`), ...strayWays(line, ways, `lines[${String(index)}]`)]),
  ];
}

function repeated(list: readonly { readonly id: string }[], path: string): readonly Issue[] {
  return list.flatMap((one, index): readonly Issue[] => (list.findIndex((other) => other.id === one.id) === index ? [] : [{ code: 'duplicate', path: `${path}[${String(index)}].id`, given: one.id, allowed: 'each id once' }]));
}

function hourIssues(line: EstimateLine, path: string): readonly Issue[] {
  if (line.kind !== 'labour') return [];
  const { low, likely, high } = line;
  const fault = likely < low ? { at: 'likely', given: likely, min: low } : high < likely ? { at: 'high', given: high, min: likely } : undefined;
  return fault === undefined ? [] : [{ code: 'order', path: `${path}.${fault.at}`, given: fault.given, allowed: `${String(fault.min)} or more`, params: { reason: 'hours', min: fault.min } }];
}

function strayWays({ ways }: EstimateLine, known: ReadonlySet<string>, path: string): readonly Issue[] {
  return ways.flatMap((way, index): readonly Issue[] => (known.has(way) ? [] : [{ code: 'choice', path: `${path}.ways[${String(index)}]`, given: way, allowed: `one of ${[...known].join(', ')}`, params: { choices: [...known].join(', ') } }]));
}
