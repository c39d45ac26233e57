import type { Issue } from '#result';
import { type GuessedColumn, type LeftOutReason, guessMapping, headerRowOf, headerUnit } from './import-headers.ts';
import { type ColumnTarget, parseTarget, targetName } from './import-target.ts';
import type { Table } from './table.ts';

/** One column of the file and what it is taken to hold. */
export interface PlannedColumn {
  readonly letter: string;
  readonly header: string;
  readonly target: ColumnTarget | null;
  /** Why it is left out; null where it is not, or where the user said so. */
  readonly reason: LeftOutReason | null;
  /** Unit the header names for the bare numbers below, where it is not the stored one. */
  readonly unit: string | null;
}

export interface PlannedColumns {
  readonly columns: readonly PlannedColumn[];
  /** Index of the first row below the header. */
  readonly firstRow: number;
  /** True when the file has a header: then a row longer than it is refused. */
  readonly headed: boolean;
  readonly issues: readonly Issue[];
}

/** Header or letter of a column → what it holds, or null to leave it out. */
export type ColumnMapping = Readonly<Record<string, string | null>>;

/**
 * Settles what each column of a table holds: what the user said, by header or letter, and the guess for the rest.
 * Errors: a name that is no column, a content that does not exist, two columns for one content, a header that names a unit
 * of another kind, no column for the keys, none for a figure.
 */
export function planColumns(table: Table, mapping: ColumnMapping = {}): PlannedColumns {
  const headerRow = headerRowOf(table.rows);
  const widest = table.rows.reduce((width, row) => Math.max(width, row.length), 0);
  const headers = headerRow === null ? Array.from({ length: widest }, () => '') : (table.rows[headerRow] ?? []);
  const guessed = guessMapping(headers);
  const { said, issues } = sayings(guessed, mapping);
  const columns = guessed.map((column, index) => settle(column, said.get(index), [...said.values()]));
  const firstRow = headerRow === null ? 0 : headerRow + 1;
  return { columns, firstRow, headed: headerRow !== null, issues: [...issues, ...doubled(columns, said), ...misfits(columns, said), ...lacking(columns)] };
}

/** What the user said of each column, by its index; a letter counts only where no header reads the same. */
function sayings(columns: readonly GuessedColumn[], mapping: ColumnMapping): { readonly said: ReadonlyMap<number, string | null>; readonly issues: readonly Issue[] } {
  const said = new Map<number, string | null>();
  const issues: Issue[] = [];
  for (const [name, content] of Object.entries(mapping)) {
    const path = `mapping.${name}`;
    const byHeader = columns.flatMap((column, index) => (column.header.trim() === name.trim() && name.trim() !== '' ? [index] : []));
    const found = byHeader.length > 0 ? byHeader : columns.flatMap((column, index) => (column.letter === name.trim().toUpperCase() ? [index] : []));
    if (found.length === 0) issues.push({ code: 'unknown', path, given: name, allowed: `a header or letter of the file: ${columns.map(({ letter, header }) => header || letter).join(', ')}`, params: { reason: 'importColumn' } });
    if (content !== null && parseTarget(content) === undefined) {
      issues.push({ code: 'choice', path, given: content, allowed: 'key, note, remark, or a quantity name such as downWeightG', params: { reason: 'importTarget' } });
    } else {
      for (const index of found) said.set(index, content);
    }
  }
  return { said, issues };
}

function settle(column: GuessedColumn, saying: string | null | undefined, allSaid: readonly (string | null)[]): PlannedColumn {
  const { letter, header } = column;
  if (saying === null) return { letter, header, target: null, reason: null, unit: null };
  if (saying !== undefined) {
    return { letter, header, target: parseTarget(saying) ?? null, reason: null, unit: headerUnit(header, saying).unit };
  }
  const isTaken = column.target !== null && allSaid.includes(column.target);
  const target = column.target === null || isTaken ? null : (parseTarget(column.target) ?? null);
  return { letter, header, target, reason: isTaken ? 'repeated' : column.reason, unit: column.unit };
}

function doubled(columns: readonly PlannedColumn[], said: ReadonlyMap<number, string | null>): readonly Issue[] {
  const firstBy = new Map<string, PlannedColumn>();
  return columns.flatMap((column, index): readonly Issue[] => {
    if (column.target === null) return [];
    const name = targetName(column.target);
    const first = firstBy.get(name);
    if (first === undefined) firstBy.set(name, column);
    if (first === undefined || !said.has(index)) return [];
    return [{ code: 'duplicate', path: `column ${column.letter}`, given: name, allowed: `one column for ${name}; column ${first.letter} holds it too`, params: { reason: 'importTarget', column: column.letter, other: first.letter } }];
  });
}

function misfits(columns: readonly PlannedColumn[], said: ReadonlyMap<number, string | null>): readonly Issue[] {
  return columns.flatMap(({ letter, header }, index): readonly Issue[] => {
    const content = said.get(index) ?? null;
    if (content === null || headerUnit(header, content).fits) return [];
    return [{ code: 'unit', path: `column ${letter}`, given: header, allowed: `a header whose unit fits ${content}`, params: { reason: 'importHeader', column: letter, content } }];
  });
}

function lacking(columns: readonly PlannedColumn[]): readonly Issue[] {
  const has = (...kinds: readonly ColumnTarget['holds'][]): boolean => columns.some(({ target }) => target !== null && kinds.includes(target.holds));
  const missing = (reason: string, allowed: string): Issue => ({ code: 'required', path: 'mapping', given: columns.map(({ letter, header }) => header || letter).join(', '), allowed, params: { reason } });
  return [
    ...(has('key', 'note') ? [] : [missing('importKeyColumn', 'a column with the key number (key) or the note name (note)')]),
    ...(has('figure') ? [] : [missing('importFigureColumn', 'at least one column with a figure, such as downWeightG')]),
  ];
}
