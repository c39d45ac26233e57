import { currencyOf } from '#money';
import { z } from 'zod';

/** Free words, empty where there are none. */
export const words = (most: number) => z.string().max(most).default('');
/** Words on one line, empty where there are none. */
export const line = (most: number) => z.string().max(most).regex(/^\P{Cc}*$/u, 'one line').default('');
/** Id of something kept. */
export const named = z.string().min(1).max(60);
/** Whole smallest units of a currency. */
export const minor = z.number().int().min(0);
/** Code of ISO 4217. */
export const currency = z.string().length(3).refine((code) => currencyOf(code) === code, 'a currency code of ISO 4217 in use, such as EUR');
/** Piano a card is of, null for none. */
export const piano = named.nullable().default(null);
