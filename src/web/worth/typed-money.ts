import { type Currency, currencyOf, decimalText, formatAmount, parseMoney } from '#money';
import type { Issue } from '#result';
import type { UnitId } from '#units';
import { figureReader, shownFigure } from '../action/terms/typed-figures.ts';

/** An amount as a field shows it, in the reader's own marks; empty for none. */
export function shownMoney(minor: number | null | undefined, code: string, locale: string): string {
  const currency = currencyOf(code);
  if (minor == null) return '';
  return currency === undefined ? String(minor) : formatAmount({ minor, currency }, locale);
}

/** A reader of typed figures and amounts: an empty text is null, what is wrong is gathered in `issues`. */
export interface WorthReader {
  readonly issues: readonly Issue[];
  readonly money: (typed: string, path: string) => number | null;
  readonly figure: (typed: string, path: string, unit?: UnitId) => number | null;
  /** The same, and nothing there is wrong. */
  readonly needed: <T>(value: T | null, typed: string, path: string) => T | null;
}

/** Reads what is typed in one currency and locale. */
export function worthReader(code: string, locale: string): WorthReader {
  const currency = currencyOf(code);
  const figures = figureReader(locale);
  const issues: Issue[] = [];
  return {
    get issues() { return [...figures.issues, ...issues]; },
    money: (typed, path) => (currency === undefined || typed.trim() === '' ? null : moneyOf(typed, path, { currency, locale, issues })),
    figure: (typed, path, unit = '1') => figures.read(typed, path, unit),
    needed: (value, typed, path) => {
      if (typed.trim() === '') issues.push({ code: 'required', path, given: typed, allowed: 'a figure', params: { kind: 'number' } });
      return value;
    },
  };
}

function moneyOf(typed: string, path: string, { currency, locale, issues }: { readonly currency: Currency; readonly locale: string; readonly issues: Issue[] }): number | null {
  const read = parseMoney(typed, { currency, locale, path });
  if (!read.ok) {
    issues.push(...read.issues);
    return null;
  }
  if (read.value.minor >= 0) return read.value.minor;
  issues.push({ code: 'range', path, given: decimalText(read.value), allowed: '0 or more', params: { min: 0 } });
  return null;
}

export { shownFigure };
