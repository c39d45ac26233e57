import { once } from 'node:events';
import type { Problem } from '#result';

/** Writes data to standard output, text or bytes, and waits while the reader is slower than we are. */
export async function print(data: string | Uint8Array): Promise<void> {
  if (!process.stdout.write(data)) await once(process.stdout, 'drain');
}

/** Writes one JSON value to standard output; of a list each entry stands on a line of its own. */
export async function printJson(value: unknown): Promise<void> {
  if (!Array.isArray(value)) return print(`${JSON.stringify(value)}\n`);
  await print('[');
  const PIECE = 500;
  for (let start = 0; start < value.length; start += PIECE) {
    const lines = value.slice(start, start + PIECE).map((item: unknown) => `\n${JSON.stringify(item)}`);
    await print((start === 0 ? '' : ',') + lines.join(','));
  }
  await print('\n]\n');
}

/** Says something to the person at the terminal, on standard error, where it spoils no data. */
export function note(text: string): void {
  process.stderr.write(`${text}\n`);
}

/** Writes a problem document to standard error, for the script that asked. */
export function noteProblem(problem: Problem): void {
  process.stderr.write(`${JSON.stringify(problem, undefined, 2)}\n`);
}

/** Rows in columns of even width; the last column is left ragged. */
export function aligned(rows: readonly (readonly string[])[], indent = ''): string {
  const widths = (rows[0] ?? []).map((_, column) => Math.max(...rows.map((cells) => widthOf(cells[column] ?? ''))));
  const line = (cells: readonly string[]): string => cells.map((cell, column) => (column === cells.length - 1 ? cell : cell + ' '.repeat((widths[column] ?? 0) - widthOf(cell)))).join('  ');
  return rows.map((cells) => `${indent}${line(cells).trimEnd()}\n`).join('');
}

const letters = new Intl.Segmenter();

/** Letters as the eye counts them: an accent belongs to its letter. */
function widthOf(text: string): number {
  return Array.from(letters.segment(text)).length;
}
