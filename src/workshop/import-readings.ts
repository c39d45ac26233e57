import { type Compass, type Reading, type State, readingSchema, understandFigure } from '#instrument';
import { type Result, mustBe, ok } from '#result';
import type { ColumnMapping } from './import-columns.ts';
import { type PlannedRow, planImport } from './import-plan.ts';
import type { ReadingEntry } from './records.ts';
import type { Table } from './table.ts';

export interface LooseTable {
  readonly table: Table;
  readonly mapping?: ColumnMapping;
  readonly compass: Compass;
  readonly state: State;
  readonly sessionId: string | null;
  readonly locale?: string;
  /** When and by whom the readings are to be said to come, since no store acknowledged them. */
  readonly at: string;
  readonly by: string;
}

/**
 * Readings of a table that never saw a store, by the same plan as an import into one: ids name row and quantity (`row-3/downWeightG`).
 * Errors: everything the plan refuses, all rows of it: a proof leaves out nothing in silence.
 */
export function readingsOfTable(loose: LooseTable): Result<readonly Reading[]> {
  const { table, compass, state, locale } = loose;
  const plan = planImport({ table, compass, state, cycle: 1, standing: [], ...(loose.mapping === undefined ? {} : { mapping: loose.mapping }), ...(locale === undefined ? {} : { locale }) });
  const issues = [...plan.issues, ...plan.rows.flatMap((row) => row.issues)];
  if (issues.length > 0) return { ok: false, issues };
  return ok(plan.rows.flatMap((row) => row.entries.map((entry) => readingOf(entry, row, loose))));
}

function readingOf(entry: ReadingEntry, { row }: PlannedRow, { state, sessionId, locale, at, by }: LooseTable): Reading {
  const { quantity, scope, index, repeat = 1, typed = null, outcome = null } = entry;
  const path = `row ${String(row)}`;
  const value = typed === null ? null : mustBe(understandFigure(quantity, typed, { path, ...(locale === undefined ? {} : { locale }) })).value;
  return readingSchema.parse({
    id: `row-${String(row)}/${quantity}${repeat > 1 ? `#${String(repeat)}` : ''}`,
    cycle: 1, state, quantity, scope, index, repeat, typed, value, outcome,
    uncertainty: null,
    basis: entry.basis ?? 'measured',
    remark: entry.remark ?? '',
    sessionId, at, by,
  });
}
