import { type UnitId, formatMeasure } from '#units';

/** Unit a field's name ends in; the name is the contract, so nothing else needs to know. */
const endings: readonly (readonly [ending: string, unit: UnitId])[] = [
  ['GMm', 'gmm'], ['Mm', 'mm'], ['Hz', 'Hz'], ['Cents', 'ct'], ['Deg', 'deg'], ['Pct', 'pct'], ['N', 'N'], ['S', 's'], ['C', 'degC'], ['G', 'g'],
];

/** A field of an operation as a reader sees it: up to four decimals, its unit read off its name. */
export function printField(name: string, value: unknown, locale: string): string {
  if (typeof value === 'number') return printNumber(name, value, locale);
  if (Array.isArray(value)) return value.map((item) => printField(name, item, locale)).join(', ');
  if (typeof value === 'object' && value !== null) {
    return Object.entries(value).map(([inner, item]) => `${inner} ${printField(inner, item, locale)}`).join(', ');
  }
  return value === undefined || value === null ? '–' : String(value as string | boolean);
}

function printNumber(name: string, value: number, locale: string): string {
  const unit = endings.find(([ending]) => name.endsWith(ending))?.[1];
  const decimals = [0, 1, 2, 3].find((count) => Math.abs(value - Number(value.toFixed(count))) < 1e-9) ?? 4;
  return formatMeasure(value, { locale, decimals, ...(unit === undefined ? {} : { unit }) });
}
