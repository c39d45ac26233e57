import type { TaxPeriod } from '#workshop';

/** A stretch of whole days, its first and its last; ISO 8601. */
export interface DaySpan {
  readonly from: string;
  readonly until: string;
}

const MONTHS = { month: 1, quarter: 3, year: 12 } as const satisfies Readonly<Record<TaxPeriod, number>>;
const DAY_MS = 86_400_000;

/**
 * The tax period a day lies in, where tax years begin on the first of the month `fromMonth` (1 to 12) and quarters count from there.
 * With months counted through, m = 12·year + month − 1, the period begins with m − (m + 1 − fromMonth) mod n; n = 1, 3 or 12 months.
 * Ignores periods that begin within a month. @source DMBM530020
 */
export function taxPeriodOf(day: string, period: TaxPeriod, fromMonth: number): DaySpan {
  const month = 12 * Number(day.slice(0, 4)) + Number(day.slice(5, 7)) - 1;
  const first = month - ((month + 1 - fromMonth) % MONTHS[period]);
  return { from: firstOf(first), until: isoOf(Date.parse(firstOf(first + MONTHS[period])) - DAY_MS) };
}

/** The tax year that begins in a year of the calendar. */
export function taxYearOf(year: number, fromMonth: number): DaySpan {
  return taxPeriodOf(firstOf(12 * year + fromMonth - 1), 'year', fromMonth);
}

/** The year of the calendar in which the tax year of a day begins. */
export function taxYearOn(day: string, fromMonth: number): number {
  return Number(taxPeriodOf(day, 'year', fromMonth).from.slice(0, 4));
}

/** The first day of a month counted through. */
function firstOf(month: number): string {
  return `${String(Math.floor(month / 12)).padStart(4, '0')}-${String((month % 12) + 1).padStart(2, '0')}-01`;
}

const isoOf = (ms: number): string => new Date(ms).toISOString().slice(0, 10);
