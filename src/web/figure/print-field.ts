import { unitOfField } from '#operation';
import { formatMeasure } from '#units';

/** A field of an operation as a reader sees it: up to four decimals, its unit read off its name; `wordOf` puts names of causes and remedies into words. */
export function printField(name: string, value: unknown, locale: string, wordOf: (name: string) => string = (text) => text): string {
  if (typeof value === 'number') return printNumber(name, value, locale);
  if (Array.isArray(value)) return value.length === 0 ? '–' : value.map((item) => printField(name, item, locale, wordOf)).join('; ');
  return typeof value === 'string' ? wordOf(value) : value === undefined || value === null ? '–' : JSON.stringify(value);
}

function printNumber(name: string, value: number, locale: string): string {
  const decimals = [0, 1, 2, 3].find((count) => Math.abs(value - Number(value.toFixed(count))) < 1e-9) ?? 4;
  const number = formatMeasure(value, { locale, decimals });
  const unit = unitOfField(name);
  return unit === '' ? number : unit === '°' ? number + unit : `${number}\u00A0${unit}`;
}
