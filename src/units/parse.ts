import { type Issue, type Result, ok, refuse } from '#result';
import { type UnitId, conversionTo, isUnitWord, unitSign } from './unit.ts';

/** What was understood of a typed figure: the value in the stored unit, and the sum or unit that was read. */
export interface ParsedMeasure {
  readonly value: number;
  readonly unit: UnitId;
  /** Exactly what was typed. */
  readonly typed: string;
  /** True when the typed text was more than a plain number in the stored unit: then the screen echoes the value. */
  readonly converted: boolean;
}

export interface ParseOptions {
  readonly unit: UnitId;
  /** Named in issues, so that the message names the cell. */
  readonly path?: string;
  /** BCP 47 tag; decides only whether `1,250` is a decimal comma or ambiguous. */
  readonly locale?: string;
}

const VULGAR: Readonly<Record<string, string>> = {
  '¼': '1/4', '½': '1/2', '¾': '3/4', '⅛': '1/8', '⅜': '3/8', '⅝': '5/8', '⅞': '7/8', '⅓': '1/3', '⅔': '2/3',
};

const NUMBER = String.raw`\d[\d.,'’]*|[.,]\d+`;
const TERM = new RegExp(
  String.raw`^\s*(?:(?<whole>\d+)\s+(?<top>\d+)\s*/\s*(?<below>\d+)|(?<num>\d+)\s*/\s*(?<den>\d+)|(?<plain>${NUMBER}))(?:e(?<exp>[+-]?\d+))?\s*(?<unit>[^\d\s+.,/-][^\d+]*?3?)?\s*$`,
  'iu',
);

/**
 * Reads a figure as people type it: `1,25`, `1.25`, `3 1/4"`, `25.4mm`, `12.5+0.3`, `1.3 oz`, `0.37N`.
 * A sum adds its terms; a plus sign before the figure, as scales send it, says nothing; a unit at the end holds for terms without one. Nothing is rounded.
 * Errors: empty, not a number, unit of another kind, `1,250` where it could be either 1.25 or 1250.
 */
export function parseMeasure(typed: string, options: ParseOptions): Result<ParsedMeasure> {
  const fail = (code: Issue['code'], allowed: string, reason = 'figure') =>
    refuse({ code, path: options.path ?? '', given: typed, allowed, params: { given: typed, unit: unitSign[options.unit], reason } });
  const text = tidy(typed);
  if (text === '') return fail('required', 'a number');
  const signed = /^[-]/u.test(text);
  const terms = splitSum(signed ? text.slice(1) : text);
  if (signed && terms.length > 1) return fail('format', 'a sum of positive terms, or one negative number', 'sum');
  const matches = terms.map((term) => TERM.exec(term)?.groups);
  if (matches.some((match) => match === undefined)) return fail('format', formatHint(options.unit));
  const lastUnit = matches.at(-1)?.['unit'];
  let total = 0;
  for (const match of matches) {
    if (match === undefined) return fail('format', formatHint(options.unit));
    const number = numberOf(match, options.locale);
    if (number === 'ambiguous') return fail('ambiguous', `1.25 for one and a quarter, 1250 without a sign for the thousand`);
    if (number === undefined || !Number.isFinite(number)) return fail('format', formatHint(options.unit));
    const word = match['unit'] ?? lastUnit;
    if (word === undefined && match['plain'] === undefined) return fail('unit', `a fraction with its unit, such as 3 1/4"`, 'fraction');
    const conversion = word === undefined ? { factor: 1, offset: 0 } : conversionTo(options.unit, word);
    if (conversion === undefined) {
      return isUnitWord(word ?? '') ? fail('unit', `a figure in ${unitSign[options.unit] || 'plain numbers'}`) : fail('format', formatHint(options.unit));
    }
    total += (signed ? -number : number) * conversion.factor + conversion.offset;
  }
  const plain = matches.length === 1 && lastUnit === undefined && matches[0]?.['plain'] !== undefined;
  return ok({ value: total === 0 ? 0 : total, unit: options.unit, typed, converted: !plain });
}

function tidy(typed: string): string {
  return typed
    .replace(/[\u2212\u2013]/gu, '-')
    .replace(/(\d)?([¼½¾⅛⅜⅝⅞⅓⅔])/gu, (_, digit: string | undefined, sign: string) => `${digit ?? ''}${digit ? ' ' : ''}${VULGAR[sign] ?? ''}`)
    .replace(/[\u00A0\u202F\u2009]/gu, ' ')
    .trim()
    .replace(/^\+\s*(?=[\d.,])/u, '');
}

/** Splits at plus signs, but not inside an exponent such as `1e+3`. */
function splitSum(text: string): readonly string[] {
  return text.split(/(?<!\d[eE])\+/u);
}

function numberOf(match: Readonly<Record<string, string | undefined>>, locale: string | undefined): number | 'ambiguous' | undefined {
  if (match['whole'] !== undefined) return Number(match['whole']) + Number(match['top']) / Number(match['below']);
  if (match['num'] !== undefined) return Number(match['num']) / Number(match['den']);
  const digits = plainDigits(match['plain'] ?? '', locale);
  if (digits === undefined || digits === AMBIGUOUS) return digits === undefined ? undefined : 'ambiguous';
  return Number(match['exp'] === undefined ? digits : `${digits}e${match['exp']}`);
}

/** Stands for digits that could be read two ways. */
const AMBIGUOUS = 'ambiguous';

/**
 * Digits with a decimal point, from digits with whatever separators were typed.
 * A lone dot or comma is the decimal sign; with both, the last one is, and the others must group by three.
 */
function plainDigits(text: string, locale: string | undefined): string | undefined {
  const bare = text.replace(/['’](?=\d{3})/gu, '');
  const marks = [...bare.matchAll(/[.,]/gu)].map((match) => match[0]);
  if (marks.length === 0) return bare;
  if (marks.length === 1) {
    const couldGroup = marks[0] === ',' && /^[1-9]\d{0,2},\d{3}$/u.test(bare) && groupsWithComma(locale);
    return couldGroup ? AMBIGUOUS : bare.replace(',', '.');
  }
  const decimal = marks.at(-1) ?? '.';
  const group = marks[0] ?? ',';
  if (decimal === group) return /^\d{1,3}([.,]\d{3})+$/u.test(bare) ? bare.replaceAll(group, '') : undefined;
  const shape = new RegExp(`^\\d{1,3}([${group}]\\d{3})+[${decimal}]\\d*$`, 'u');
  return shape.test(bare) ? bare.replaceAll(group, '').replace(decimal, '.') : undefined;
}

function groupsWithComma(locale: string | undefined): boolean {
  const parts = new Intl.NumberFormat(locale ?? 'en').formatToParts(1234567);
  return parts.some((part) => part.type === 'group' && part.value === ',');
}

function formatHint(unit: UnitId): string {
  return unitSign[unit] === '' ? 'a number such as 1.25 or 1,25' : `a number such as 1.25 or 1,25, in ${unitSign[unit]}`;
}
