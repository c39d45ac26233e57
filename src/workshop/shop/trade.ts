import { daySchema } from '#instrument';
import { placeSchema } from '#law';
import { roundings } from '#money';
import { z } from 'zod';
import { taxRegimes } from '../estimate.ts';
import { currency, line, minor, named, piano, words } from './fields.ts';

const day = daySchema.nullable().default(null);
/** So large that no piano costs it, so small that a book of a thousand pianos sums to the last unit. */
const price = minor.max(1e12).nullable().default(null);
const code = currency.nullable().default(null);
/** Who sold or bought, as the invoice names them. */
const party = z.strictObject({ name: line(200), address: words(600), words: words(4000) }).default({ name: '', address: '', words: '' });
const shared = { person: named.nullable().default(null), on: day, invoice: line(60), priceMinor: price, currency: code, details: party };

/** Drafts of what a stock book is kept from. What is not known is left open, and the book names it. */
export const tradeDrafts = {
  /** A piano bought to be sold again. What its restoration costs is no part of the price. */
  acquisition: z.strictObject({
    kind: z.literal('acquisition'), ...shared, pianoId: piano,
    /** Running number in the stock book. */
    number: z.number().int().min(1).max(999_999),
    /** Maker, serial number and whatever else tells it from others. */
    description: line(300),
    /** Bought without tax that may be deducted; null while nobody has said so. */
    eligible: z.boolean().nullable().default(null),
  }),
  /** The sale of a piano of the stock book. */
  sale: z.strictObject({
    kind: z.literal('sale'), ...shared,
    /** The purchase it ends, by its id. */
    acquisition: named,
    regime: z.enum(taxRegimes).default('margin'),
    /** Where it is taxed; from it comes the rate of the day, unless one is stated. */
    place: placeSchema.nullable().default(null),
    ratePct: z.number().min(0).max(100).nullable().default(null),
    rounding: z.enum(roundings).default('half-up'),
  }),
  /** Where the tax years of the shop begin, and so its quarters; the newest is the one in use. */
  taxYear: z.strictObject({ kind: z.literal('taxYear'), fromMonth: z.number().int().min(1).max(12), details: z.strictObject({ words: words(4000) }).default({ words: '' }) }),
} as const;

/** Kinds of cards a stock book is kept from. */
export const tradeKinds = ['acquisition', 'sale'] as const satisfies readonly (keyof typeof tradeDrafts)[];
/** The same with what its tax periods go by. */
export const stockBookKinds = [...tradeKinds, 'taxYear'] as const;
