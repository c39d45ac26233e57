import type { KeyNumber, Outcome, Reading } from '#instrument';
import type { GridColumn } from './grid-columns.ts';
import type { GridBox } from './grid-move.ts';
import type { CellWrite } from './grid-paste.ts';

/** What the block commands need of the sheet. */
export interface BlockContext {
  readonly keys: readonly KeyNumber[];
  readonly columns: readonly GridColumn[];
  readonly standing: (key: KeyNumber, column: GridColumn) => Reading | undefined;
  readonly derived: (key: KeyNumber, column: GridColumn) => number | undefined;
}

type FigureColumn = Extract<GridColumn, { kind: 'figure' }>;

const figuresIn = ({ columns }: BlockContext, { left, right }: GridBox): readonly FigureColumn[] =>
  columns.slice(left, right + 1).filter((column): column is FigureColumn => column.kind === 'figure');

const placeOf = (key: KeyNumber, { quantity, repeat }: FigureColumn): Pick<CellWrite, 'key' | 'quantity' | 'repeat'> => ({ key, quantity, repeat });

/** Copies the top row of a selection into the rows below it; with one row selected, the row above into it. Empty cells copy nothing. */
export function fillDown(box: GridBox, context: BlockContext): readonly CellWrite[] {
  const single = box.top === box.bottom;
  const from = context.keys[single ? box.top - 1 : box.top];
  const into = context.keys.slice(single ? box.top : box.top + 1, box.bottom + 1);
  if (from === undefined) return [];
  return figuresIn(context, box).flatMap((column) => {
    const reading = context.standing(from, column);
    const figure = reading === undefined ? undefined : figureOf(reading);
    return figure === undefined ? [] : into.filter((key) => !sameAs(context.standing(key, column), reading)).map((key) => ({ ...placeOf(key, column), ...figure }));
  });
}

function figureOf({ outcome, typed }: Reading): Pick<CellWrite, 'outcome' | 'typed'> | undefined {
  if (outcome !== null) return { outcome };
  return typed === null ? undefined : { typed };
}

const sameAs = (one: Reading | undefined, other: Reading | undefined): boolean => one !== undefined && one.typed === other?.typed && one.outcome === other.outcome;

/** Clears every reading of a selection; what was there stays in the history. */
export function clearBlock(box: GridBox, context: BlockContext): readonly CellWrite[] {
  return context.keys.slice(box.top, box.bottom + 1).flatMap((key) =>
    figuresIn(context, box)
      .filter((column) => context.standing(key, column) !== undefined)
      .map((column): CellWrite => ({ ...placeOf(key, column), clear: true })),
  );
}

/** The selection as a spreadsheet takes it: tabs and line ends, whole figures with the reader's decimal sign, outcomes in words. */
export function copyBlock(box: GridBox, context: BlockContext, print: { readonly number: (value: number) => string; readonly outcome: (outcome: Outcome) => string }): string {
  const cellText = (key: KeyNumber, column: GridColumn): string => {
    const reading = column.kind === 'figure' ? context.standing(key, column) : undefined;
    if (reading?.outcome != null) return print.outcome(reading.outcome);
    const value = column.kind === 'figure' ? reading?.value : context.derived(key, column);
    return value == null ? '' : print.number(value);
  };
  return context.keys
    .slice(box.top, box.bottom + 1)
    .map((key) => context.columns.slice(box.left, box.right + 1).map((column) => cellText(key, column)).join('\t'))
    .join('\n');
}

/** A number with the decimal sign of a locale and every digit it has: for the clipboard, where nothing may be rounded. */
export function wholeNumber(value: number, locale: string): string {
  const decimal = new Intl.NumberFormat(locale).formatToParts(1.5).find(({ type }) => type === 'decimal')?.value ?? '.';
  return String(value).replace('.', decimal);
}
