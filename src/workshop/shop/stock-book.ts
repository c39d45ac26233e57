import { roundings } from '#money';
import { z } from 'zod';
import { taxRegimes } from '../estimate.ts';

/** What a line of the stock book lacks, or what does not fit together in it. Nothing of it is guessed. */
const stockGaps = [
  'acquisition', 'numberTwice', 'boughtOn', 'seller', 'sellerAddress', 'description', 'purchasePrice', 'eligible',
  'soldOn', 'buyer', 'salePrice', 'saleInvoice', 'order', 'currencies', 'notEligible', 'rate', 'rateDiffers',
] as const;
export type StockGap = (typeof stockGaps)[number];

/** Which lines are looked at. */
export const stockChoices = ['all', 'open', 'sold'] as const;
export type StockChoice = (typeof stockChoices)[number];
/** What totals are drawn up for; quarters and years count from the month the shop’s tax year begins in. */
export const taxPeriods = ['month', 'quarter', 'year'] as const;
export type TaxPeriod = (typeof taxPeriods)[number];
/** Whose stock book: the shop's own, or the invented one of the demonstration. They are never mixed. */
export const stockBooks = ['shop', 'demo'] as const;
export type StockBookName = (typeof stockBooks)[number];

const party = z.strictObject({ name: z.string(), address: z.string() });
const minor = z.number().int();

/** One piano of the stock book: what it was bought and sold for, and what follows. Null: not known, not so far, or not to be worked out. */
export const stockLineSchema = z.strictObject({
  number: z.number().int().nullable(),
  acquisitionId: z.string().nullable(), saleId: z.string().nullable(), pianoId: z.string().nullable(),
  boughtOn: z.string().nullable(), purchaseInvoice: z.string(), seller: party, description: z.string(),
  purchaseMinor: minor.nullable(), purchaseCurrency: z.string().nullable(), eligible: z.boolean().nullable(),
  isSold: z.boolean(),
  soldOn: z.string().nullable(), saleInvoice: z.string(), buyer: party,
  saleMinor: minor.nullable(), saleCurrency: z.string().nullable(), regime: z.enum(taxRegimes).nullable(),
  rounding: z.enum(roundings).nullable(),
  ratePct: z.number().nullable(),
  /** Since when the rate has stood, where it was taken from the dated rates; null where it was stated. */
  rateSince: z.string().nullable(),
  /** Sale less purchase; below nought at a loss. What restoration cost is no part of it. */
  marginMinor: minor.nullable(),
  /** How much less it fetched than it cost; nought where there was a margin. */
  lossMinor: minor.nullable(),
  /** Tax held in the margin; nought at a loss. Only of what was sold under the margin scheme. */
  taxMinor: minor.nullable(),
  gaps: z.array(z.enum(stockGaps)),
});
export type StockLine = z.output<typeof stockLineSchema>;

/** What was sold under the margin scheme within one tax period, in one currency. A loss lessens no other margin. */
export const stockTotalSchema = z.strictObject({
  /** First and last day of the period. */
  from: z.string(), until: z.string(), currency: z.string(), count: z.number().int(),
  purchaseMinor: minor, saleMinor: minor, gainMinor: minor, lossMinor: minor, taxMinor: minor,
});
export type StockTotal = z.output<typeof stockTotalSchema>;

/** The stock book as it is shown. */
export const stockBookSchema = z.strictObject({
  book: z.enum(stockBooks), year: z.number().int().nullable(), which: z.enum(stockChoices), period: z.enum(taxPeriods),
  /** Month the tax years of its shop begin in; null where nobody stated it: then they go by the calendar. */
  taxYearFrom: z.number().int().nullable(),
  lines: z.array(stockLineSchema), totals: z.array(stockTotalSchema),
  /** Numbers of those sold under the margin scheme that are in no total, since something is missing; null for a sale without its purchase. */
  leftOut: z.array(z.number().int().nullable()),
  /** Numbers within the run that no purchase has. */
  missingNumbers: z.array(z.number().int()),
  /** Tax years something was bought or sold in, each by the year of the calendar it begins in. */
  years: z.array(z.number().int()),
});
export type StockBook = z.output<typeof stockBookSchema>;
