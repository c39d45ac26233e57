import type { StockBookName, StockChoice, TaxPeriod } from '#workshop';

/** What of the stock book an address asks for; all of it where nothing is said. */
export interface StockSearch {
  readonly year?: number | undefined;
  readonly which?: StockChoice | undefined;
  readonly period?: TaxPeriod | undefined;
  readonly book?: StockBookName | undefined;
}

const CHOICES: readonly StockChoice[] = ['all', 'open', 'sold'];
const PERIODS: readonly TaxPeriod[] = ['month', 'quarter', 'year'];
const BOOKS: readonly StockBookName[] = ['shop', 'demo'];

/** Reads an address; what it does not understand is left out. Written without schemas, which the first page does not load. */
export function stockSearchOf(search: Readonly<Record<string, unknown>>): StockSearch {
  const one = <T extends string>(name: string, known: readonly T[]): T | undefined => known.find((value) => value === search[name]);
  const year = Number(search['year']);
  const [which, period, book] = [one('which', CHOICES), one('period', PERIODS), one('book', BOOKS)];
  return {
    ...(Number.isInteger(year) && year >= 1 ? { year } : {}), ...(which === undefined ? {} : { which }),
    ...(period === undefined ? {} : { period }), ...(book === undefined ? {} : { book }),
  };
}
