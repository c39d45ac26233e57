import { unitOfField } from '#operation';
import { formatMeasure } from '#units';

/** A field of an operation as a reader sees it: up to four decimals, its unit read off its name, a long list of numbers by its even stretches, such as the places of a grid; `wordOf` puts names of causes and remedies into words. */
export function printField(name: string, value: unknown, locale: string, wordOf: (name: string) => string = (text) => text): string {
  const print = (item: unknown): string => printField(name, item, locale, wordOf);
  if (typeof value === 'number') return printNumber(name, value, locale);
  if (Array.isArray(value)) return value.length === 0 ? '–' : pieces(value).map(([first, last]) => (first === last ? print(first) : `${print(first)} … ${print(last)}`)).join('; ');
  return typeof value === 'string' ? wordOf(value) : value === undefined || value === null ? '–' : JSON.stringify(value);
}

function printNumber(name: string, value: number, locale: string): string {
  const decimals = [0, 1, 2, 3].find((count) => Math.abs(value - Number(value.toFixed(count))) < 1e-9) ?? 4;
  const number = formatMeasure(value, { locale, decimals });
  const unit = unitOfField(name);
  return unit === '' ? number : unit === '°' ? number + unit : `${number}\u00A0${unit}`;
}

/** Fewer numbers than this are shown one by one. */
const SHORT = 12;
/** Fewer in a row are no stretch. */
const LEAST_RUN = 4;
const SAME = 1e-9;

/** Entries of a list as they are shown: each by itself, or of a long list of numbers the ends of the stretches that go up by even steps. */
function pieces(list: readonly unknown[]): readonly (readonly [first: unknown, last: unknown])[] {
  if (list.length < SHORT || !list.every((item) => typeof item === 'number')) return list.map((item) => [item, item]);
  const shown: (readonly [number, number])[] = [];
  for (let from = 0; from < list.length; ) {
    const step = (list[from + 1] ?? NaN) - (list[from] ?? NaN);
    let to = from;
    while (Math.abs((list[to + 1] ?? NaN) - (list[to] ?? NaN) - step) < SAME) to += 1;
    const end = to - from + 1 < LEAST_RUN ? from : to;
    shown.push([list[from] ?? NaN, list[end] ?? NaN]);
    from = end + 1;
  }
  return shown;
}
