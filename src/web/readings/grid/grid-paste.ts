import type { KeyNumber, Outcome, QuantityName } from '#instrument';
import type { Issue } from '#result';
import { type OutcomeWords, type UnderstoodCell, understandCell } from '../sheet/understand-cell.ts';
import type { GridColumn } from './grid-columns.ts';
import { type GridBox, isWide } from './grid-move.ts';

/** One cell to write. */
export interface CellWrite {
  readonly key: KeyNumber;
  readonly quantity: QuantityName;
  readonly repeat: number;
  readonly typed?: string;
  readonly outcome?: Outcome;
  readonly clear?: true;
  readonly remark?: string;
}

/** A pasted cell that is not taken, or is unlikely: by key and column, with what stood in it. */
export interface PasteNote {
  readonly key: KeyNumber;
  readonly column: GridColumn;
  readonly text: string;
  readonly issues: readonly Issue[];
}

export type PastePlan =
  | { readonly kind: 'nothing' }
  | { readonly kind: 'tooManyRows'; readonly over: number; readonly lastKey: KeyNumber }
  | { readonly kind: 'tooManyColumns'; readonly over: number }
  | {
      readonly kind: 'block';
      readonly writes: readonly CellWrite[];
      readonly refused: readonly PasteNote[];
      readonly unlikely: readonly PasteNote[];
      /** Empty cells of the block: what stands there is left. */
      readonly empty: number;
      /** Words of a heading row that was left out. */
      readonly heading: readonly string[] | null;
    };

export interface PasteContext {
  readonly keys: readonly KeyNumber[];
  readonly columns: readonly GridColumn[];
  readonly locale: string;
  readonly words: OutcomeWords;
}

/**
 * Works out what a pasted block would write from the top left cell of the selection on.
 * A block that does not fit is refused as a whole, by how much; a single cell fills the whole selection.
 * Empty cells never clear what stands. Nothing is written here.
 */
export function planPaste(block: readonly (readonly string[])[], box: GridBox, context: PasteContext): PastePlan {
  const { heading, body } = withoutHeading(block, box, context);
  const spread = body.length === 1 && body[0]?.length === 1 && isWide(box) ? spreadOver(box, body[0][0] ?? '') : body;
  if (spread.length === 0) return { kind: 'nothing' };
  const overRows = box.top + spread.length - context.keys.length;
  if (overRows > 0) return { kind: 'tooManyRows', over: overRows, lastKey: context.keys.at(-1) ?? 0 };
  const overColumns = box.left + Math.max(...spread.map((cells) => cells.length)) - context.columns.length;
  if (overColumns > 0) return { kind: 'tooManyColumns', over: overColumns };
  return { kind: 'block', heading, ...sortCells(spread, box, context) };
}

const spreadOver = ({ top, bottom, left, right }: GridBox, text: string): readonly (readonly string[])[] =>
  Array.from({ length: bottom - top + 1 }, () => Array.from({ length: right - left + 1 }, () => text));

/** A first row of words above rows of figures is their heading, and no reading. */
function withoutHeading(block: readonly (readonly string[])[], box: GridBox, context: PasteContext): { readonly heading: readonly string[] | null; readonly body: readonly (readonly string[])[] } {
  const [first, second] = block;
  if (first === undefined || second === undefined) return { heading: null, body: block };
  const kinds = (cells: readonly string[]): readonly UnderstoodCell['kind'][] => cells.map((text, index) => understandAt(context.columns[box.left + index], text, '', context).kind);
  const words = (cells: readonly string[]): boolean => cells.some((text) => text.trim() !== '') && cells.every((text) => text.trim() === '' || /\p{L}/u.test(text));
  const isHeading = words(first) && kinds(first).every((kind) => kind === 'refused' || kind === 'empty') && kinds(second).some((kind) => kind === 'figure' || kind === 'outcome');
  return isHeading ? { heading: first, body: block.slice(1) } : { heading: null, body: block };
}

function understandAt(column: GridColumn | undefined, text: string, path: string, { locale, words }: PasteContext): UnderstoodCell {
  if (text.trim() === '') return { kind: 'empty' };
  if (column?.kind !== 'figure') return { kind: 'refused', typed: text, issues: [] };
  return understandCell(column.quantity, text, { path, locale, words });
}

interface Sorted {
  readonly writes: CellWrite[];
  readonly refused: PasteNote[];
  readonly unlikely: PasteNote[];
  empty: number;
}

function sortCells(block: readonly (readonly string[])[], box: GridBox, context: PasteContext): Sorted {
  const sorted: Sorted = { writes: [], refused: [], unlikely: [], empty: 0 };
  for (const [down, cells] of block.entries()) {
    for (const [along, text] of cells.entries()) {
      const key = context.keys[box.top + down];
      const column = context.columns[box.left + along];
      if (key === undefined || column === undefined) continue;
      sortCell(sorted, key, column, text, context);
    }
  }
  return sorted;
}

function sortCell(sorted: Sorted, key: KeyNumber, column: GridColumn, text: string, context: PasteContext): void {
  const cell = understandAt(column, text, `key ${String(key)}, ${column.id}`, context);
  if (cell.kind === 'empty') sorted.empty += 1;
  else if (cell.kind === 'refused' || column.kind !== 'figure') sorted.refused.push({ key, column, text, issues: cell.kind === 'refused' ? cell.issues : [] });
  else {
    const { quantity, repeat } = column;
    sorted.writes.push({ key, quantity, repeat, ...(cell.kind === 'outcome' ? { outcome: cell.outcome } : { typed: cell.typed }) });
    if (cell.kind === 'figure' && cell.warning !== undefined) sorted.unlikely.push({ key, column, text, issues: [cell.warning] });
  }
}
