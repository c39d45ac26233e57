import { type Issue, type Result, andThen, map, refuse } from '#result';
import type { Table } from '#workshop';
import { decodeText } from './decode-text.ts';
import { readDelimited } from './delimited.ts';
import { MAX_FILE_BYTES } from './limits.ts';
import { readWorkbook } from './workbook.ts';

export interface TableFile {
  readonly bytes: Uint8Array;
  /** Sheet of a workbook; the first when left out. */
  readonly sheet?: string;
}

/**
 * Reads a table out of a file, whatever its name says: a workbook is known by its first bytes, everything else is text with
 * columns parted by tab, semicolon, bar or comma. Cells stay exactly as they are; blank rows at the end are no rows.
 * Errors: empty, larger than `MAX_FILE_BYTES`, an older workbook or other document, not a table.
 */
export async function readTable({ bytes, sheet }: TableFile): Promise<Result<Table>> {
  if (bytes.length === 0) return refuse({ code: 'required', path: 'file', given: '', allowed: 'a file with rows in it', params: { reason: 'importEmpty' } });
  if (bytes.length > MAX_FILE_BYTES) return refuse(fileTooLarge(bytes.length));
  if (startsWith(bytes, [0x50, 0x4b])) {
    return map(await readWorkbook(bytes, sheet), (workbook) => ({ encoding: 'xlsx', delimiter: '', ...workbook, rows: withoutTail(workbook.rows) }));
  }
  if (startsWith(bytes, [0xd0, 0xcf, 0x11, 0xe0])) return unreadable('an older binary workbook or document');
  if (startsWith(bytes, [0x25, 0x50, 0x44, 0x46])) return unreadable('a PDF');
  return andThen(decodeText(bytes), ({ encoding, text }) => map(readDelimited(text), ({ delimiter, rows }) => ({ encoding, delimiter, sheet: null, sheets: [], rows: withoutTail(rows) })));
}

/** What is said of a file larger than is read. */
export function fileTooLarge(bytes: number): Issue {
  const max = MAX_FILE_BYTES / 1024 / 1024;
  return { code: 'length', path: 'file', given: `${(bytes / 1024 / 1024).toFixed(1)} MB`, allowed: `at most ${String(max)} MB`, params: { reason: 'importFileLimit', max } };
}

function startsWith(bytes: Uint8Array, signature: readonly number[]): boolean {
  return signature.every((byte, index) => bytes[index] === byte);
}

function unreadable(given: string): Result<never> {
  return refuse({ code: 'format', path: 'file', given, allowed: 'a table as CSV, TSV or XLSX', params: { reason: 'importBinary' } });
}

function withoutTail(rows: readonly (readonly string[])[]): readonly (readonly string[])[] {
  const last = rows.findLastIndex((row) => row.some((cell) => cell.trim() !== ''));
  return rows.slice(0, last + 1);
}
