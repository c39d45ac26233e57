import { quantityOf } from '#instrument';
import type { SheetRow } from '../sheet/sheet-row.ts';

/** Ids of acknowledged weights of a sheet that belong to no session; what is still on its way has an answer of its own. */
export function unassignedIn(rows: readonly SheetRow[]): readonly string[] {
  return rows.flatMap(({ cells }) =>
    [...cells.values()].flatMap(({ reading, sync }) => (sync === 'kept' && reading !== undefined && reading.sessionId === null && quantityOf(reading.quantity).weighed ? [reading.id] : [])),
  );
}
