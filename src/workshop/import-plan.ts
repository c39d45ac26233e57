import type { Compass, Reading, State } from '#instrument';
import type { Issue } from '#result';
import { languageOf } from '#text';
import { type CellContext, planCells } from './import-cells.ts';
import { type ColumnMapping, type PlannedColumn, planColumns } from './import-columns.ts';
import { type NamingContext, type RowPlace, placeOfRow } from './import-place.ts';
import { placeText } from './place.ts';
import type { ReadingEntry } from './records.ts';
import { type Table, isBlankRow } from './table.ts';

/** What a file is compared with and how it is to be read. */
export interface ImportRequest {
  readonly table: Table;
  /** What the user says of columns; the rest is guessed. */
  readonly mapping?: ColumnMapping;
  readonly compass: Compass;
  /** Readings now standing; those of other cycles and states are passed over. */
  readonly standing: readonly Reading[];
  readonly cycle: number;
  readonly state: State;
  readonly locale?: string;
}

export type RowOutcome = 'create' | 'update' | 'same' | 'refused' | 'empty';

/** What becomes of one row. A row is taken whole or refused whole. */
export interface PlannedRow {
  /** As a spreadsheet counts, from 1. */
  readonly row: number;
  readonly place: RowPlace | null;
  readonly cells: readonly string[];
  readonly outcome: RowOutcome;
  /** Why it is refused. */
  readonly issues: readonly Issue[];
  /** Figures taken, but unlikely. */
  readonly warnings: readonly Issue[];
  readonly entries: readonly ReadingEntry[];
}

export interface ImportPlan {
  readonly columns: readonly PlannedColumn[];
  readonly rows: readonly PlannedRow[];
  readonly counts: Readonly<Record<RowOutcome, number>>;
  /** Everything to be written, as one event. */
  readonly entries: readonly ReadingEntry[];
  /** What is wrong with the file as a whole; then no row is planned and nothing is to be written. */
  readonly issues: readonly Issue[];
}

/** Most figures one event takes; `readingBatchSchema` holds the same limit. */
const MOST_ENTRIES = 5000;

/**
 * Plans an import, writing nothing: for each row whether it creates, updates, is the same, is refused or empty, and the
 * exact entries to write. Preview and run both come from here, so that a preview cannot promise anything else than the run does.
 * A figure is `same` when its value, outcome, and whatever remark and basis the file gives are those of the standing reading;
 * an update says which reading it was based on. An empty cell asks for nothing and clears nothing.
 * Errors per row: no such key, a key named in two rows, a cell that cannot be read, more cells than the header has columns.
 */
export function planImport(request: ImportRequest): ImportPlan {
  const { columns, firstRow, headed, issues } = planColumns(request.table, request.mapping);
  const blocked = (problems: readonly Issue[]): ImportPlan => ({ columns, rows: [], counts: countsOf([]), entries: [], issues: problems });
  const body = request.table.rows.slice(firstRow);
  if (body.every(isBlankRow)) return blocked([{ code: 'required', path: '', given: '', allowed: 'rows with figures below the header', params: { reason: 'importRows' } }]);
  if (issues.length > 0) return blocked(issues);
  const context = contextOf(request, columns, headed, body);
  const rows = refuseDoubles(body.map((cells, index) => planRow(cells, firstRow + index + 1, context)));
  const entries = rows.flatMap((row) => row.entries);
  if (entries.length > MOST_ENTRIES) {
    return blocked([{ code: 'length', path: '', given: entries.length, allowed: `at most ${String(MOST_ENTRIES)} figures in one import`, params: { reason: 'importEntries', max: MOST_ENTRIES } }]);
  }
  return { columns, rows, counts: countsOf(rows), entries, issues: [] };
}

interface RowContext extends CellContext {
  readonly columns: readonly PlannedColumn[];
  readonly headed: boolean;
  readonly naming: NamingContext;
}

function contextOf({ compass, standing, cycle, state, locale }: ImportRequest, columns: readonly PlannedColumn[], headed: boolean, body: readonly (readonly string[])[]): RowContext {
  const noteColumns = columns.flatMap(({ target }, index) => (target?.holds === 'note' || target?.holds === 'key' ? [index] : []));
  const usesH = body.some((cells) => noteColumns.some((index) => /^\s*h(?:is|es|[#♯b♭])?-?\d/iu.test(cells[index] ?? '')));
  return {
    columns,
    headed,
    naming: { compass, usesH, readsGerman: locale !== undefined && languageOf(locale) === 'de' },
    cycle,
    state,
    standing: new Map(standing.map((reading) => [placeText(reading), reading])),
    ...(locale === undefined ? {} : { locale }),
  };
}

function planRow(cells: readonly string[], row: number, context: RowContext): PlannedRow {
  const base = { row, cells, place: null, issues: [], warnings: [], entries: [] };
  if (isBlankRow(cells)) return { ...base, outcome: 'empty' };
  const path = `row ${String(row)}`;
  const textOf = (holds: 'key' | 'note'): string => cells[context.columns.findIndex(({ target }) => target?.holds === holds)] ?? '';
  const place = placeOfRow({ key: textOf('key'), note: textOf('note'), path }, context.naming);
  if (!place.ok) return { ...base, outcome: 'refused', issues: place.issues };
  const wide = context.headed ? overflow(cells, context.columns.length, path) : [];
  const planned = planCells(cells, place.value, path, context);
  const issues = [...wide, ...planned.issues];
  if (issues.length > 0) return { ...base, place: place.value, outcome: 'refused', issues, warnings: planned.warnings };
  const outcome = planned.outcomes.includes('update') ? 'update' : planned.outcomes.includes('create') ? 'create' : planned.outcomes.length > 0 ? 'same' : 'empty';
  return { ...base, place: place.value, outcome, warnings: planned.warnings, entries: planned.entries };
}

/** Cells beyond the header: what becomes of a decimal comma in a file that parts its columns by commas. */
function overflow(cells: readonly string[], columns: number, path: string): readonly Issue[] {
  const beyond = cells.slice(columns).filter((cell) => cell.trim() !== '');
  if (beyond.length === 0) return [];
  return [{ code: 'length', path, given: beyond.join(', '), allowed: `${String(columns)} columns as in the header; a decimal comma needs quotes here, or semicolons between the columns`, params: { reason: 'importWide', columns } }];
}

/** Refuses every row of a place named more than once: which of them is right, only the user knows. */
function refuseDoubles(rows: readonly PlannedRow[]): readonly PlannedRow[] {
  const rowsBy = new Map<string, readonly number[]>();
  const idOf = ({ place, outcome }: PlannedRow): string | undefined => (place === null || outcome === 'empty' ? undefined : `${place.scope}/${String(place.index)}`);
  for (const row of rows) {
    const id = idOf(row);
    if (id !== undefined) rowsBy.set(id, [...(rowsBy.get(id) ?? []), row.row]);
  }
  return rows.map((row) => {
    const others = (rowsBy.get(idOf(row) ?? '') ?? []).filter((other) => other !== row.row);
    const [other] = others;
    if (other === undefined) return row;
    const double: Issue = { code: 'duplicate', path: `row ${String(row.row)}`, given: row.cells.join(', '), allowed: `one row for each key; row ${String(other)} names the same`, params: { reason: 'importRow', other } };
    return { ...row, outcome: 'refused', issues: [...row.issues, double], entries: [] };
  });
}

function countsOf(rows: readonly PlannedRow[]): Readonly<Record<RowOutcome, number>> {
  const counts = { create: 0, update: 0, same: 0, refused: 0, empty: 0 };
  for (const { outcome } of rows) counts[outcome] += 1;
  return counts;
}
