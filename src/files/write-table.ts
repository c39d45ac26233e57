import type { PrintedTable } from '#workshop';
import { stringify } from 'csv-stringify/sync';
import writeWorkbook from 'write-excel-file/node';

/** The forms a table is written in. */
export const tableFormats = ['csv', 'tsv', 'xlsx'] as const;
export type TableFormat = (typeof tableFormats)[number];

export interface WriteOptions {
  /** Writes numbers with this locale's decimal sign, and parts the columns of a CSV by semicolons where that is a comma. Left out: the point. */
  readonly locale?: string;
  /** Name of the sheet in a workbook. */
  readonly sheet?: string;
}

/**
 * Bytes of a table. Numbers keep their full precision: digits in text files, numbers in a workbook. Text files are UTF-8 after
 * RFC 4180, with a byte order mark only where there is more than ASCII in them, so that a spreadsheet does not take it for its old encoding.
 */
export async function writeTable(table: PrintedTable, format: TableFormat, options: WriteOptions = {}): Promise<Uint8Array> {
  if (format === 'xlsx') return new Uint8Array(await workbookOf(table, options.sheet ?? 'Readings'));
  const decimal = options.locale !== undefined && hasDecimalComma(options.locale) ? ',' : '.';
  const rows = table.rows.map((row) => row.map((cell) => (typeof cell === 'number' ? String(cell).replace('.', decimal) : cell)));
  const delimiter = format === 'tsv' ? '\t' : decimal === ',' ? ';' : ',';
  const text = stringify([[...table.header], ...rows], { delimiter, record_delimiter: '\r\n', quote_record_delimiter: true });
  return new TextEncoder().encode(/[^\p{ASCII}]/u.test(text) ? `\uFEFF${text}` : text);
}

/** MIME type of a format, for whoever sends it on. */
export function typeOfFormat(format: TableFormat): string {
  return { csv: 'text/csv; charset=utf-8', tsv: 'text/tab-separated-values; charset=utf-8', xlsx: 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet' }[format];
}

function hasDecimalComma(locale: string): boolean {
  return new Intl.NumberFormat(locale).formatToParts(1.5).some(({ type, value }) => type === 'decimal' && value === ',');
}

const escapedSign = (sign: string): string => `_x${sign.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}_`;

/**
 * Text as a workbook keeps it (ECMA-376 part 1, 22.9.2.19): signs that XML cannot hold, and underscores that would read as such an
 * escape, as `_xHHHH_`. The writer looks words up in a plain object and loses those every object answers to, such as
 * `constructor`: these are escaped too, and read back as they were.
 */
function escapedString(text: string): string {
  const escaped = text.replaceAll(/_(?=x[\dA-F]{4}_)|[^\P{Cc}\t\n]|[\uFFFE\uFFFF]/giu, escapedSign);
  return escaped in Object.prototype ? escapedSign(escaped) + escaped.slice(1) : escaped;
}

function workbookOf({ header, rows }: PrintedTable, sheet: string): Promise<Buffer> {
  const head = header.map((value) => ({ value, type: String, fontWeight: 'bold' as const }));
  const body = rows.map((row) => row.map((value) => (value === '' ? null : typeof value === 'number' ? { value, type: Number } : { value: escapedString(value), type: String })));
  return writeWorkbook([head, ...body], { sheet, stickyRowsCount: 1 }).toBuffer();
}
