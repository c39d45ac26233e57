import { type Currency, currencyOf, roundings } from '#money';
import { type Result, ok, refuse } from '#result';
import { z } from 'zod';

/** The currency of the amounts, by its code. */
export const currencyField = z.string().length(3).describe('Code of ISO 4217 in use, such as EUR');

/** How the document rounds. */
export const roundingField = z.enum(roundings).default('half-up').describe('Halves away from nought, halves to the even neighbour, or down');

/** The currency of a code, or a refusal that says what is allowed. */
export function knownCurrency(code: string, path = 'currency'): Result<Currency> {
  const currency = currencyOf(code);
  return currency === undefined ? refuse({ code: 'choice', path, given: code, allowed: 'a currency code of ISO 4217 in use, such as EUR, GBP or JPY', params: { reason: 'currency' } }) : ok(currency);
}
