import { createSay, explainIssue } from '#text';
import type { Issue } from '#result';
import type { ImportPlan, PlannedRow } from './import-plan.ts';
import { targetName } from './import-target.ts';
import type { ReadingBatch } from './records.ts';
import type { ImportPreview, ImportRow } from './routes.ts';
import type { Table } from './table.ts';

/** Rows shown from the top, whatever becomes of them. */
const SHOWN_ROWS = 10;

/** The plan in the reader's words: counts, what each column holds, the first ten rows and every refused one. */
export function previewOf(plan: ImportPlan, table: Table, locale: string): ImportPreview {
  const say = createSay(locale);
  const inColumn = ({ params }: Issue, words: string): string => {
    const column = String(params?.['column'] ?? '');
    return column === '' ? words : say('import.inColumn', { column, words });
  };
  const explain = (issue: Issue): string => inColumn(issue, explainIssue(say, issue, locale));
  const doubt = (warning: Issue): string => inColumn(warning, say('import.unlikely', { given: '', min: '', max: '', unit: '', ...warning.params }));
  const rowOf = ({ row, place, cells, outcome, issues, warnings }: PlannedRow): ImportRow => ({
    row,
    key: place?.scope === 'key' ? place.index : null,
    cells: [...cells],
    outcome,
    problems: [...issues.map(explain), ...(outcome === 'refused' ? [] : warnings.map(doubt))],
  });
  return {
    encoding: table.encoding,
    delimiter: table.delimiter,
    sheet: table.sheet,
    sheets: [...table.sheets],
    problems: plan.issues.map(explain),
    columns: plan.columns.map(({ letter, header, target, reason }) => ({ letter, header, mapsTo: target === null ? null : targetName(target), reason: reason === null ? null : say(`import.leftOut.${reason}`) })),
    counts: { ...plan.counts },
    rows: plan.rows.filter(({ outcome }, index) => index < SHOWN_ROWS || outcome === 'refused').map(rowOf),
  };
}

/** The plan as the one batch to write, or null when it asks for nothing. */
export function batchOf(plan: ImportPlan, batch: Omit<ReadingBatch, 'entries'>): ReadingBatch | null {
  return plan.entries.length === 0 ? null : { ...batch, entries: [...plan.entries] };
}
