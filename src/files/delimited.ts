import { type Result, map, ok, refuse } from '#result';
import { guessMapping, headerRowOf } from '#workshop';
import { CsvError, parse } from 'csv-parse/sync';
import { MAX_COLUMNS, MAX_LINE_CHARACTERS, MAX_ROWS } from './limits.ts';

export interface DelimitedRows {
  readonly delimiter: string;
  readonly rows: string[][];
}

/** Signs that may part columns; where several would do, the first: a comma is as often the decimal sign. */
const DELIMITERS = ['\t', ';', '|', ','] as const;

/** Rows the delimiter is told from. */
const SAMPLE_ROWS = 60;

/**
 * Rows and cells of delimited text, every cell exactly as written, blank rows kept in their places. A first line `sep=;` names the
 * delimiter and is no row; otherwise the sign is taken that parts the rows most evenly.
 * Errors: a quote that never closes, more rows, columns or characters in a line than the limits.
 */
export function readDelimited(text: string): Result<DelimitedRows> {
  if (hasLongLine(text)) return tooMuch('importLineLimit', `a line of more than ${String(MAX_LINE_CHARACTERS)} characters`, `at most ${String(MAX_LINE_CHARACTERS)} characters in a line`, MAX_LINE_CHARACTERS);
  const told = /^"?sep=(.)"?(?:\r\n|\r|\n|$)/iu.exec(text);
  const body = told === null ? text : text.slice(told[0].length);
  const delimiter = told?.[1] ?? delimiterOf(body);
  const parsed = parseRows(body, delimiter, MAX_ROWS + 1);
  if (parsed.ok && parsed.value.length > MAX_ROWS) return tooMuch('importRowLimit', `more than ${String(MAX_ROWS)} rows`, `at most ${String(MAX_ROWS)} rows`, MAX_ROWS);
  return map(parsed, (rows) => ({ delimiter, rows }));
}

function tooMuch(reason: string, given: string, allowed: string, max: number): Result<never> {
  return refuse({ code: 'length', path: 'file', given, allowed, params: { reason, max } });
}

function hasLongLine(text: string): boolean {
  for (const [line] of text.matchAll(/[^\r\n]+/gu)) if (line.length > MAX_LINE_CHARACTERS) return true;
  return false;
}

class TooWide extends Error {}

function parseRows(text: string, delimiter: string, to: number): Result<string[][]> {
  const onRecord = (record: string[]): string[] => {
    if (record.length > MAX_COLUMNS) throw new TooWide(`${String(record.length)} columns`);
    return record;
  };
  try {
    return ok(parse(text, { delimiter, to, record_delimiter: ['\r\n', '\n', '\r'], relax_column_count: true, relax_quotes: true, on_record: onRecord }));
  } catch (error) {
    if (error instanceof TooWide) return tooMuch('importColumnLimit', error.message, `at most ${String(MAX_COLUMNS)} columns`, MAX_COLUMNS);
    if (!(error instanceof CsvError)) throw error;
    return refuse({ code: 'format', path: 'file', given: error.message, allowed: 'every quote that opens a cell closed again', params: { reason: 'importQuote', row: Number(error['lines']) } });
  }
}

/** The sign under which the most headers are known; among those that tie, the one that parts the rows most evenly. */
function delimiterOf(text: string): string {
  const scored = DELIMITERS.map((delimiter) => ({ delimiter, score: fitness(text, delimiter) }));
  const best = Math.max(...scored.map(({ score }) => score));
  return best > 0 ? (scored.find(({ score }) => score === best)?.delimiter ?? ',') : ',';
}

/** Known headers in whole numbers, evenness of the rows as the fraction below one; 0 when the sign parts nothing. */
function fitness(text: string, delimiter: string): number {
  const parsed = parseRows(text, delimiter, SAMPLE_ROWS);
  if (!parsed.ok) return 0;
  const even = evenness(parsed.value);
  const header = parsed.value[headerRowOf(parsed.value) ?? -1] ?? [];
  return even === 0 ? 0 : guessMapping(header).filter(({ target }) => target !== null).length + even / 2;
}

/** Share of the filled rows that have the commonest number of columns; 0 when that is one. */
function evenness(rows: readonly (readonly string[])[]): number {
  const widths = rows.filter((row) => row.some((cell) => cell.trim() !== '')).map((row) => row.length);
  const counts = new Map<number, number>();
  for (const width of widths) counts.set(width, (counts.get(width) ?? 0) + 1);
  const [commonest = 0] = [...counts.keys()].sort((a, b) => (counts.get(b) ?? 0) - (counts.get(a) ?? 0));
  return commonest > 1 ? (counts.get(commonest) ?? 0) / widths.length : 0;
}
