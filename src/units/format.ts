import { type UnitId, unitSign } from './unit.ts';

export interface FormatOptions {
  readonly locale: string;
  readonly decimals: number;
  /** Leave out for a bare number, as in a table whose head names the unit. */
  readonly unit?: UnitId;
  /** Always print the sign, as for a change. */
  readonly signed?: boolean;
}

const formatters = new Map<string, Intl.NumberFormat>();

/** Prints a stored value for a reader: fixed decimals, the reader's decimal sign, a true minus, a no-break space before the unit. */
export function formatMeasure(value: number, options: FormatOptions): string {
  const number = formatterOf(options).format(value).replace('-', '\u2212');
  const sign = options.unit === undefined ? '' : unitSign[options.unit];
  if (sign === '') return number;
  return sign === '°' ? number + sign : `${number}\u00A0${sign}`;
}

function formatterOf({ locale, decimals, signed = false }: FormatOptions): Intl.NumberFormat {
  const id = `${locale} ${String(decimals)} ${String(signed)}`;
  const known = formatters.get(id);
  if (known !== undefined) return known;
  const made = new Intl.NumberFormat(locale, {
    minimumFractionDigits: decimals,
    maximumFractionDigits: decimals,
    useGrouping: false,
    signDisplay: signed ? 'exceptZero' : 'negative',
  });
  formatters.set(id, made);
  return made;
}
