import type { WorkItem, WorkWait } from './records.ts';
import type { BenchPiano } from './routes.ts';
import type { CardOf } from './shop/records.ts';

/** Where work at the bench stands, in the order it moves. */
export const benchColumns = ['toDo', 'inHand', 'waits', 'done'] as const;
export type BenchColumn = (typeof benchColumns)[number];

type Orders = ReadonlyMap<string, Pick<CardOf<'purchase'>, 'status'>>;

/** One card of the board: like jobs of one piano that stand alike. */
export interface BenchTask {
  /** The same as long as piano, remedy and column are. */
  readonly id: string;
  readonly piano: BenchPiano;
  readonly column: BenchColumn;
  readonly stage: number;
  readonly items: readonly [WorkItem, ...WorkItem[]];
  /** What it waits for, or has waited for. */
  readonly wait: WorkWait | null;
}

/** True while a job still waits: its moment has not come, its order has not arrived; one that states neither waits until somebody takes it up. */
export function waitHolds({ until, purchase }: WorkWait, now: Date, orders: Orders): boolean {
  if (until === null && purchase === null) return true;
  const isComing = purchase !== null && orders.get(purchase)?.status !== 'received';
  return isComing || (until !== null && Date.parse(until) > now.getTime());
}

/** The column a job stands in. A wait that is over leaves it where it was before. */
export function columnOf({ status, inHand, waits }: WorkItem, now: Date, orders: Orders): BenchColumn {
  if (status === 'done') return 'done';
  if (waits !== null && waitHolds(waits, now, orders)) return 'waits';
  return inHand ? 'inHand' : 'toDo';
}

/** The board: jobs of every piano, like ones together, each column in the order of the bench. Jobs that were dropped are left out. */
export function benchTasksOf(pianos: readonly BenchPiano[], now: Date, orders: Orders): readonly BenchTask[] {
  const tasks = new Map<string, BenchTask>();
  for (const piano of pianos) {
    for (const item of piano.work.filter(({ status }) => status !== 'dropped')) {
      const column = columnOf(item, now, orders);
      const wait = column === 'done' ? null : item.waits;
      const id = [piano.instrument.id, item.remedy === 'other' ? item.id : item.remedy, column, ...(wait === null ? [] : [JSON.stringify(wait)])].join(' ');
      const items = tasks.get(id)?.items;
      tasks.set(id, { id, piano, column, stage: item.stage, wait, items: items === undefined ? [item] : [...items, item] });
    }
  }
  return [...tasks.values()].sort((a, b) => a.stage - b.stage || a.piano.instrument.name.localeCompare(b.piano.instrument.name));
}
