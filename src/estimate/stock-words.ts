import type { Say } from '#text';
import type { StockLine } from '#workshop';

/** Words for a tax period by its name: `2031`, `2031-05`, `2031-Q2`. Formula of the name: ISO 8601 but for the quarter. */
export function periodName(name: string, say: Say, locale: string): string {
  const [year = '', part] = name.split('-');
  if (part === undefined) return year;
  if (part.startsWith('Q')) return say('stockBook.quarter', { year, quarter: part.slice(1) });
  return new Intl.DateTimeFormat(locale, { year: 'numeric', month: 'long', timeZone: 'UTC' }).format(new Date(`${name}-01`));
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
