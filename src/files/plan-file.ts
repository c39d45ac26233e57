import { type Result, map } from '#result';
import { type ImportPlan, type ImportRequest, type Table, planImport } from '#workshop';
import { type TableFile, readTable } from './read-table.ts';

export interface PlannedFile {
  readonly table: Table;
  readonly plan: ImportPlan;
}

/** Reads a file and plans its import: the one way for preview and run, over HTTP and on the command line. */
export async function planFile(file: TableFile, request: Omit<ImportRequest, 'table'>): Promise<Result<PlannedFile>> {
  return map(await readTable(file), (table) => ({ table, plan: planImport({ ...request, table }) }));
}
