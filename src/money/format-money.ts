import type { Money } from './amount.ts';
import { digitsOf } from './currency.ts';

/** An amount as a plain decimal for files: `1234.50`, `-0.05`, `1234` in yen. Exact to the last unit. */
export function decimalText({ minor, currency }: Money): string {
  const digits = digitsOf(currency);
  const figures = BigInt(Math.abs(minor)).toString().padStart(digits + 1, '0');
  const sign = minor < 0 ? '-' : '';
  return digits === 0 ? sign + figures : `${sign}${figures.slice(0, -digits)}.${figures.slice(-digits)}`;
}

/** Prints an amount for a reader: grouped, with the decimals of its currency, its code beside it, a true minus, no-break spaces. */
export function formatMoney(money: Money, locale: string): string {
  return printerOf(locale, money).format(decimalText(money) as `${number}`).replace('-', '\u2212');
}

/** The figure alone, for a column whose head names the currency. */
export function formatAmount(money: Money, locale: string): string {
  return printerOf(locale, money, 'bare').format(decimalText(money) as `${number}`).replace('-', '\u2212');
}

const printers = new Map<string, Intl.NumberFormat>();

function printerOf(locale: string, { currency }: Money, kind: 'named' | 'bare' = 'named'): Intl.NumberFormat {
  const id = `${locale} ${currency} ${kind}`;
  const known = printers.get(id);
  if (known !== undefined) return known;
  const digits = digitsOf(currency);
  const made = new Intl.NumberFormat(locale, {
    minimumFractionDigits: digits,
    maximumFractionDigits: digits,
    ...(kind === 'named' ? { style: 'currency', currency, currencyDisplay: 'code' } : {}),
  });
  printers.set(id, made);
  return made;
}
