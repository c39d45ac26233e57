import type { LoggerReading } from './records.ts';

/** A moment of a logger: minutes since 1 January 1970 by the clock as written, and whether the cell had a time at all. */
export interface ReadMoment {
  readonly minute: number;
  readonly hasTime: boolean;
}

type DayOrder = LoggerReading['dayOrder'];
/** Orders a day may be written in. */
export const dayOrders = ['ymd', 'dmy', 'mdy'] as const satisfies readonly DayOrder[];

const DAY = /^(\d{1,4})([-/.])\s?(\d{1,2})\2\s?(\d{2,4})\.?(?:,?\s+|T|$)/u;
const TIME = /^(\d{1,2})[:.](\d{2})(?:[:.](\d{2})(?:[.,]\d+)?)?\s*([ap])?\.?(?:m\.?)?\s*(?:Z|[+-]\d{2}:?\d{2})?$/iu;
const MINUTE_MS = 60_000;

/** Reads a day, with or without a time behind it, by an order of day, month and year; nothing where it is none. A year of two digits is one of this century. */
export function momentOf(cell: string, order: DayOrder): ReadMoment | undefined {
  const text = cell.trim();
  const found = DAY.exec(text);
  if (found === null) return undefined;
  const [whole, first = '', sign = '', second = '', third = ''] = found;
  const parts = partsOf(order, [first, second, third]);
  if (parts === undefined || (order === 'mdy' && sign === '.')) return undefined;
  const day = Date.UTC(parts.year, parts.month - 1, parts.day);
  const made = new Date(day);
  if (made.getUTCMonth() !== parts.month - 1 || made.getUTCDate() !== parts.day) return undefined;
  const rest = text.slice(whole.length);
  if (rest === '') return { minute: day / MINUTE_MS, hasTime: false };
  const minutes = minutesOf(rest);
  return minutes === undefined ? undefined : { minute: day / MINUTE_MS + minutes, hasTime: true };
}

/** Minutes of the day of `7:30`, `07:30:15` or `7:30 pm`; nothing where it is no time. Seconds are passed over. */
export function minutesOf(cell: string): number | undefined {
  const found = TIME.exec(cell.trim());
  if (found === null) return undefined;
  const [, hours = '', minutes = '', , half] = found;
  const hour = half === undefined ? Number(hours) : (Number(hours) % 12) + (half.toLowerCase() === 'p' ? 12 : 0);
  const isTime = hour < 24 && Number(minutes) < 60 && (half === undefined || (Number(hours) >= 1 && Number(hours) <= 12));
  return isTime ? hour * 60 + Number(minutes) : undefined;
}

/** Reads a figure with the decimal sign told; a unit behind it is let pass where it is the one of the column. Nothing where it is none. */
export function figureOf(cell: string, decimalSign: LoggerReading['decimalSign'], unit: RegExp): number | undefined {
  const text = cell.trim().replace(unit, '').replace('\u2212', '-').trim();
  const pattern = decimalSign === ',' ? /^[+-]?\d+(?:,\d+)?$/u : /^[+-]?\d+(?:\.\d+)?$/u;
  return pattern.test(text) ? Number(text.replace(',', '.')) : undefined;
}

function partsOf(order: DayOrder, [first, second, third]: readonly [string, string, string]): { readonly year: number; readonly month: number; readonly day: number } | undefined {
  const yearOf = (text: string): number => (text.length === 2 ? 2000 + Number(text) : Number(text));
  if (order === 'ymd') return first.length === 4 && third.length === 2 ? { year: Number(first), month: Number(second), day: Number(third) } : undefined;
  if (first.length > 2 || third.length === 3) return undefined;
  return order === 'dmy' ? { year: yearOf(third), month: Number(second), day: Number(first) } : { year: yearOf(third), month: Number(first), day: Number(second) };
}
