import type { keysOf} from '#instrument';
import { type KeyNumber, type Reading, type State, type WeighingSession, noteNameOf } from '#instrument';
import { type Say, explainIssue } from '#text';
import type { Issue } from '#result';
import type { FigureStory } from '../../figure/figure-store.ts';
import { cellIdOf } from '../sheet/sheet-row.ts';
import type { Sheet } from '../sheet/sheet.ts';
import { understandCell } from '../sheet/understand-cell.ts';
import type { Words } from '../use-words.ts';
import type { BlockContext } from './grid-block.ts';
import type { DerivedName, GridColumn } from './grid-columns.ts';
import type { GridDerived } from './grid-layout.ts';
import type { CellWrite } from './grid-paste.ts';

type FigureColumn = Extract<GridColumn, { kind: 'figure' }>;

/** The sheet as block commands see it. */
export function blockContextOf(sheet: Sheet, state: State, { keys, columns, derived }: { readonly keys: readonly KeyNumber[]; readonly columns: readonly GridColumn[]; readonly derived: GridDerived }): BlockContext {
  return {
    keys,
    columns,
    standing: (key, column) => (column.kind === 'figure' ? sheet.row(state, key).cells.get(cellIdOf(column.quantity, column.repeat))?.reading : undefined),
    derived: (key, column) => (column.kind === 'derived' ? derived.of(key)[column.id] : undefined),
  };
}

/** The text a cell is edited as: what was typed, or the outcome's word. */
export function editableText(reading: Reading | undefined, words: Words): string {
  if (reading === undefined) return '';
  return reading.outcome === null ? (reading.typed ?? '') : words.reading(reading);
}

/** What a typed text asks for at a cell: a write, nothing to do, or a refusal in words. */
export type Taken = { readonly kind: 'write'; readonly write: CellWrite } | { readonly kind: 'same' } | { readonly kind: 'refused'; readonly why: string };

interface TakeOptions {
  readonly key: KeyNumber;
  readonly column: FigureColumn;
  readonly standing: Reading | undefined;
  readonly say: Say;
  readonly locale: string;
  readonly words: Words;
}

/** Understands the text of one edited cell. */
export function takeText(text: string, { key, column, standing, say, locale, words }: TakeOptions): Taken {
  const { quantity, repeat } = column;
  const cell = understandCell(quantity, text, { path: column.id, locale, words: words.outcomes });
  const place = { key, quantity, repeat };
  switch (cell.kind) {
    case 'empty': return standing === undefined ? { kind: 'same' } : { kind: 'write', write: { ...place, clear: true } };
    case 'outcome': return standing?.outcome === cell.outcome ? { kind: 'same' } : { kind: 'write', write: { ...place, outcome: cell.outcome } };
    case 'figure': return standing?.typed === cell.typed ? { kind: 'same' } : { kind: 'write', write: { ...place, typed: cell.typed } };
    case 'refused': return { kind: 'refused', why: cell.issues.map((issue) => (issue.code === 'range'
      ? say('readings.walk.problem.range', { quantity: say(`quantity.${quantity}.name`), given: cell.typed, ...words.range(quantity, 'possible') })
      : sayRefusal(issue, column, { say, locale, words }))).join(' ') };
  }
}

/** Why a pasted cell was refused, with what is allowed; the text itself stands beside it. */
export function sayRefusal(issue: Issue, { quantity }: FigureColumn, { say, locale, words }: Pick<TakeOptions, 'say' | 'locale' | 'words'>): string {
  return issue.code === 'range' ? say('readings.allowed', words.range(quantity, 'possible')) : explainIssue(say, issue, locale);
}

/** How balance weight or friction of a key was made, for the panel that opens a figure. */
export function derivedStory(column: Extract<DerivedName, 'balanceWeightG' | 'frictionG'>, { sheet, state, key, compass, say, session }: {
  readonly sheet: Sheet;
  readonly state: State;
  readonly key: KeyNumber;
  readonly compass: Parameters<typeof keysOf>[0];
  readonly say: Say;
  readonly session: WeighingSession | null;
}): FigureStory | undefined {
  const row = sheet.row(state, key);
  if (row.downWeightG === undefined || row.upWeightG === undefined || row.upAboveDown) return undefined;
  const readings: Record<string, Reading[]> = {};
  for (const { reading } of row.cells.values()) {
    if (reading !== undefined && (reading.quantity === 'downWeightG' || reading.quantity === 'upWeightG')) (readings[reading.quantity] ??= []).push(reading);
  }
  const stepG = session?.rule === 'firstMovesLastLifts' ? session.stepG : null;
  return {
    title: say('readings.figure', { quantity: say(`readings.derived.${column}`), note: noteNameOf(compass, key) }),
    operation: 'touch-weight',
    output: column,
    input: { downWeightG: row.downWeightG, upWeightG: row.upWeightG, ...(stepG === null ? {} : { stepG }) },
    readings,
  };
}
