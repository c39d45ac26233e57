import { type Issue, type Result, andThen, ok, refuse } from '#result';
import { type Money, minorFrom } from './amount.ts';
import { type Currency, currencyOf, digitsOf } from './currency.ts';

export interface ParseMoneyOptions {
  readonly currency: Currency;
  /** Named in issues, so that the message names the cell. */
  readonly path?: string;
  /** BCP 47 tag; decides what a lone mark before three digits is. */
  readonly locale?: string;
}

const SHAPE = /^(?<lead>-?)\s*(?<before>[^\d.,'’\s+-]*)\s*(?<sign>-?)\s*(?<figure>\d[\d.,'’\s]*|[.,]\d+)\s*(?<after>[^\d.,'’\s+-]*)$/u;
const SIGNS: Readonly<Record<string, string>> = { '€': 'EUR', '£': 'GBP', '¥': 'JPY' };

/**
 * Reads money as people type it: `1.234,50`, `1,234.50`, `1 234,5`, `1'234.50`, with the code of its currency or without.
 * Nothing is rounded: more decimals than the currency has are refused, as is what could be read two ways.
 * Errors: empty, no figure, another currency, too many decimals, a lone mark that could group or divide, too large.
 */
export function parseMoney(typed: string, { currency, path = '', locale = 'en' }: ParseMoneyOptions): Result<Money> {
  const digits = digitsOf(currency);
  const fail = (code: Issue['code'], allowed: string, reason: string, more: Issue['params'] = {}) => refuse({ code, path, given: typed, allowed, params: { reason, currency, digits, ...more } });
  const text = typed.replace(/[\u2212\u2013]/gu, '-').replace(/[\u00A0\u202F\u2009]/gu, ' ').trim();
  if (text === '') return fail('required', `an amount in ${currency}`, 'money');
  const groups = SHAPE.exec(text)?.groups;
  if (groups === undefined) return fail('format', `an amount such as ${sample(digits)}, in ${currency}`, 'money', { sample: sample(digits) });
  const named = [groups['before'], groups['after']].filter((word) => word !== undefined && word !== '');
  if (named.some((word) => currencyOf(SIGNS[word ?? ''] ?? word ?? '') !== currency)) return fail('unit', `an amount in ${currency}`, 'money');
  const read = decimalOf(groups['figure'] ?? '', { digits, locale });
  if (typeof read === 'string') return fail(read === 'ambiguous' ? 'ambiguous' : 'format', HINTS[read](digits, currency), read === 'digits' ? 'moneyDigits' : 'money', { sample: sample(digits) });
  const exact = BigInt(read.whole + read.part.padEnd(digits, '0'));
  const isNegative = (groups['lead'] === '-') !== (groups['sign'] === '-');
  return andThen(minorFrom(isNegative ? -exact : exact, path), (minor) => ok({ minor, currency }));
}

const HINTS = {
  ambiguous: (digits: number) => `${sample(digits)} with both marks, or no mark between thousands`,
  digits: (digits: number, currency: string) => `at most ${String(digits)} decimals in ${currency}`,
  figure: (digits: number, currency: string) => `an amount such as ${sample(digits)}, in ${currency}`,
} as const;

const sample = (digits: number): string => (digits === 0 ? '1234' : `1234.${'50'.padEnd(digits, '0').slice(0, digits)}`);

type Decimal = { readonly whole: string; readonly part: string };

/** Whole and decimal digits of a figure with whatever marks were typed. */
function decimalOf(figure: string, { digits, locale }: { readonly digits: number; readonly locale: string }): Decimal | keyof typeof HINTS {
  const bare = figure.trim().replace(/(?<=\d)['’ ](?=\d{3}(?!\d))/gu, '');
  const marks = bare.replace(/\d/gu, '');
  if (/[^.,]/u.test(marks)) return 'figure';
  if (marks === '') return { whole: bare, part: '' };
  const last = marks.at(-1) ?? '';
  const groupMark = marks.length > 1 ? (marks[0] === last ? last : marks[0]) : loneGroupMark(bare, digits, locale);
  if (groupMark === 'either') return 'ambiguous';
  const grouped = groupMark === last ? bare : bare.slice(0, bare.lastIndexOf(last));
  const whole = groupMark === undefined ? grouped : ungrouped(grouped, groupMark);
  const part = groupMark === last ? '' : bare.slice(bare.lastIndexOf(last) + 1);
  if (whole === undefined) return 'figure';
  return part.length > digits ? 'digits' : { whole, part };
}

/** What a lone mark before three digits does: it groups where the reader's language groups with it, unless three decimals are usual. */
function loneGroupMark(bare: string, digits: number, locale: string): string | undefined {
  const mark = /^[1-9]\d{0,2}([.,])\d{3}$/u.exec(bare)?.[1];
  if (mark === undefined || mark !== groupMarkOf(locale)) return undefined;
  return digits === 3 ? 'either' : mark;
}

function ungrouped(text: string, mark: string): string | undefined {
  return new RegExp(`^\\d{1,3}([${mark}]\\d{3})+$`, 'u').test(text) ? text.replaceAll(mark, '') : undefined;
}

function groupMarkOf(locale: string): string | undefined {
  return new Intl.NumberFormat(locale).formatToParts(1234567).find(({ type }) => type === 'group')?.value;
}
