import type { LogEvent } from '#workshop';
import { and, desc, eq, lt } from 'drizzle-orm';
import type { Bench } from '../database.ts';
import { event } from '../schema.ts';
import { chainOf } from './chain.ts';
import { eventOf } from './event-text.ts';

/** Events of an instrument, newest first; of one taken back too, since its log is kept. */
export async function listEvents({ db }: Bench, id: string, { before, limit = 100 }: { before?: number; limit?: number } = {}): Promise<readonly LogEvent[]> {
  const chain = await chainOf(db, id);
  const rows = await db.select().from(event)
    .where(and(eq(event.workshop, chain.workshop), eq(event.instrument, id), before === undefined ? undefined : lt(event.seq, before)))
    .orderBy(desc(event.seq)).limit(limit);
  return rows.map(eventOf);
}
