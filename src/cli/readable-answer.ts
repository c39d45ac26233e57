import { unitOfField } from '#operation';
import type { Say } from '#text';
import { aligned } from './output.ts';

/** An answer as an aligned list for the eye: a field, its figure, its unit. Rounded to six digits; in full with --json. */
export function readableAnswer(answer: unknown, say: Say, locale: string): string {
  const format = new Intl.NumberFormat(locale, { maximumSignificantDigits: 6, useGrouping: false });
  if (!Array.isArray(answer)) return aligned(rowsOf('', answer, format));
  return answer
    .map((item: unknown, index) => {
      const number = index + 1;
      return isRefused(item) ? `${say('cli.calc.refusedCase', { number })}\n` : `${say('cli.calc.case', { number })}\n${aligned(rowsOf('', item, format), '  ')}`;
    })
    .join('');
}

function rowsOf(path: string, value: unknown, format: Intl.NumberFormat): readonly (readonly string[])[] {
  if (typeof value === 'number') {
    const unit = unitOfField(path.replaceAll(/\[\d+\]/gu, '').split('.').at(-1)?.replace(/s$/u, '') ?? '') || unitOfField(path);
    return [[path, unit === '' ? format.format(value) : `${format.format(value)} ${unit}`]];
  }
  if (Array.isArray(value)) {
    if (value.length === 0) return [[path, '—']];
    if (value.every((item) => typeof item === 'number')) return [[path, value.map((item: number) => format.format(item)).join('  ')]];
    return value.flatMap((item: unknown, index) => rowsOf(`${path}[${String(index)}]`, item, format));
  }
  if (typeof value === 'object' && value !== null) return Object.entries(value).flatMap(([key, inner]) => rowsOf(path === '' ? key : `${path}.${key}`, inner, format));
  return [[path, typeof value === 'string' ? value : value === null ? '—' : JSON.stringify(value)]];
}

function isRefused(item: unknown): boolean {
  return typeof item === 'object' && item !== null && 'problem' in item;
}
