import type { Say } from '#text';
import type { StockBook, StockLine } from '#workshop';
import { type DaySpan, taxYearOf } from './tax-period.ts';

/** Words for a stretch of days: its first and last, so that nobody has to know where a quarter begins. */
export function spanWords({ from, until }: DaySpan, locale: string): string {
  return new Intl.DateTimeFormat(locale, { dateStyle: 'medium', timeZone: 'UTC' }).formatRange(new Date(from), new Date(until));
}

/** Words for the tax year that begins in a year of the calendar: the year where it begins in January, else its first and last day. */
export function taxYearWords(year: number, { taxYearFrom }: Pick<StockBook, 'taxYearFrom'>, locale: string): string {
  return taxYearFrom === null || taxYearFrom === 1 ? String(year) : spanWords(taxYearOf(year, taxYearFrom), locale);
}

/** Where the tax years of a book begin, or that nobody stated it. */
export function taxYearTold({ taxYearFrom }: Pick<StockBook, 'taxYearFrom'>, say: Say, locale: string): string {
  return taxYearFrom === null ? say('stockBook.taxYear.none') : say('stockBook.taxYear.told', { month: monthName(taxYearFrom, locale) });
}

/** The name of a month, 1 to 12. */
export function monthName(month: number, locale: string): string {
  return new Intl.DateTimeFormat(locale, { month: 'long', timeZone: 'UTC' }).format(new Date(Date.UTC(2000, month - 1)));
}

/** How a line of the stock book is named in a sentence: its number, or that it has none. */
export function numberName(number: StockLine['number'], say: Say): string {
  return number === null ? say('stockBook.noNumber') : String(number);
}

/** What a line lacks, in a sentence that names it. */
export function gapsWords({ number, gaps }: Pick<StockLine, 'number' | 'gaps'>, say: Say): string {
  return say('stockBook.gapsOf', { number: numberName(number, say), gaps: gaps.map((gap) => say(`stockBook.gap.${gap}`)).join('; ') });
}

/** What a line is headed by: its number and what the piano is. */
export function lineTitle({ number, description }: Pick<StockLine, 'number' | 'description'>, say: Say): string {
  return [number === null ? say('stockBook.noNumber') : say('stockBook.line', { number }), description].filter((part) => part !== '').join(' · ');
}
