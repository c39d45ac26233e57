import { type Issue, type Result, ok, refuse } from '#result';
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import readSheets, { type CellValue, type Sheet } from 'read-excel-file/universal';
import { MAX_COLUMNS, MAX_PARTS, MAX_ROWS, MAX_UNPACKED_BYTES } from './limits.ts';

export interface WorkbookRows {
  readonly sheet: string;
  readonly sheets: readonly string[];
  readonly rows: string[][];
}

/** Parts of a workbook by their names in the archive. */
type Parts = Readonly<Record<string, Uint8Array>>;

const SHEET_PART = /^xl\/worksheets\/[^/]+\.xml$/u;

/**
 * Rows of one sheet of an XLSX workbook (ISO/IEC 29500), every cell as text: numbers in the fewest digits that mean the same number,
 * dates as ISO 8601, error values (`#DIV/0!`) as they show. What the archive says it holds is checked before anything is unpacked.
 * Errors: no workbook, a sheet that does not exist, larger than the limits allow.
 */
export async function readWorkbook(bytes: Uint8Array, wanted?: string): Promise<Result<WorkbookRows>> {
  const parts = unpack(bytes);
  if (!parts.ok) return parts;
  if (parts.value['xl/workbook.xml'] === undefined) return noWorkbook('an archive without a workbook');
  const stretched = overstretched(parts.value);
  if (stretched !== undefined) return refuse(stretched);
  try {
    return chosen(await readSheets<string>(bufferOf(withErrorsAsText(parts.value)), { trim: false, parseNumber: plainNumber }), wanted);
  } catch (error) {
    return noWorkbook(error instanceof Error ? error.message : String(error));
  }
}

function noWorkbook(given: string): Result<never> {
  return refuse({ code: 'format', path: 'file', given, allowed: 'a workbook as XLSX, or the sheet saved as CSV', params: { reason: 'importWorkbook' } });
}

function unpack(bytes: Uint8Array): Result<Parts> {
  try {
    let [parts, size] = [0, 0];
    unzipSync(bytes, { filter: ({ originalSize }) => ((parts += 1), (size += originalSize), false) });
    if (parts > MAX_PARTS || size > MAX_UNPACKED_BYTES) return refuse(tooLarge(`${String(parts)} parts of ${String(size)} bytes`));
    return ok(unzipSync(bytes, { filter: ({ name }) => /\.(?:xml|rels)$/u.test(name) }));
  } catch (error) {
    return noWorkbook(error instanceof Error ? error.message : String(error));
  }
}

function tooLarge(given: string): Issue {
  return { code: 'length', path: 'file', given, allowed: `a workbook of at most ${String(MAX_UNPACKED_BYTES / 1024 / 1024)} MB unpacked`, params: { reason: 'importUnpacked', max: MAX_UNPACKED_BYTES / 1024 / 1024 } };
}

/** A filled cell far out makes the reader fill all before it: so its address is looked at first. */
function overstretched(parts: Parts): Issue | undefined {
  for (const [name, content] of Object.entries(parts)) {
    if (!SHEET_PART.test(name)) continue;
    const text = strFromU8(content, true);
    for (const [, column = '', row = ''] of text.matchAll(/<(?:\w+:)?c\s[^>]*?\br="([A-Z]+)(\d+)"[^>]*[^/>]>/gu)) {
      if (Number(row) > MAX_ROWS) return { code: 'length', path: 'file', given: `a cell in row ${row}`, allowed: `at most ${String(MAX_ROWS)} rows`, params: { reason: 'importRowLimit', max: MAX_ROWS } };
      if (columnNumber(column) > MAX_COLUMNS) return { code: 'length', path: 'file', given: `a cell in column ${column}`, allowed: `at most ${String(MAX_COLUMNS)} columns`, params: { reason: 'importColumnLimit', max: MAX_COLUMNS } };
    }
    for (const [, row = ''] of text.matchAll(/<(?:\w+:)?row\s[^>]*?\br="(\d+)"/gu)) {
      if (Number(row) > 2 ** 20) return { code: 'length', path: 'file', given: `row ${row}`, allowed: `at most ${String(MAX_ROWS)} rows`, params: { reason: 'importRowLimit', max: MAX_ROWS } };
    }
  }
  return undefined;
}

function columnNumber(letters: string): number {
  return Array.from(letters).reduce((number, letter) => number * 26 + letter.charCodeAt(0) - 64, 0);
}

/** The reader takes error values for empty cells; as text they stay and are refused by name. */
function withErrorsAsText(parts: Parts): Parts {
  const turn = (content: Uint8Array): Uint8Array => strToU8(strFromU8(content, true).replace(/(<(?:\w+:)?c\s[^>]*?\bt=)"e"/gu, '$1"str"'), true);
  return Object.fromEntries(Object.entries(parts).map(([name, content]) => [name, SHEET_PART.test(name) ? turn(content) : content]));
}

function bufferOf(parts: Parts): ArrayBuffer {
  const packed = zipSync(parts, { level: 0 });
  return packed.buffer.slice(packed.byteOffset, packed.byteOffset + packed.byteLength);
}

function chosen(all: readonly Sheet<string>[], wanted: string | undefined): Result<WorkbookRows> {
  const sheets = all.map(({ sheet }) => sheet);
  const found = wanted === undefined ? all[0] : all.find(({ sheet }) => sheet === wanted);
  if (found === undefined) return refuse({ code: 'choice', path: 'sheet', given: wanted ?? '', allowed: `one of ${sheets.join(', ')}`, params: { choices: sheets.join(', ') } });
  return ok({ sheet: found.sheet, sheets, rows: found.data.map((row) => row.map(cellText)) });
}

/**
 * A workbook keeps 49.3 as `49.299999999999997`: the shortest text that means the same number is what was typed. Whole numbers
 * longer than a double holds stay as they are.
 */
function plainNumber(stored: string): string {
  const number = Number(stored);
  return Number.isNaN(number) || /^-?\d{16,}$/u.test(stored) ? stored : String(number);
}

function cellText(value: CellValue<string> | null): string {
  if (value === null) return '';
  if (value instanceof Date) return value.toISOString().replace(/T00:00:00\.000Z$/u, '');
  return typeof value === 'boolean' ? String(value).toUpperCase() : String(value);
}
