import { and, count, eq } from 'drizzle-orm';
import { DEMO } from './bench-store.ts';
import type { Bench } from './database.ts';
import { analysis, card, chainHead, event, job, person, personal, reading, send } from './schema.ts';

/** Removes the demo workshop and all it holds: the one thing that is ever deleted. Answers how many instruments went. */
export async function removeDemo({ db }: Bench): Promise<number> {
  return await db.transaction(async (tx) => {
    await tx.select().from(chainHead).where(eq(chainHead.workshop, DEMO)).for('update');
    const [standing] = await tx.select({ count: count() }).from(card).where(and(eq(card.workshop, DEMO), eq(card.entity, 'instrument'), eq(card.standing, true)));
    for (const table of [job, analysis, send, reading, card, event, chainHead, person, personal]) await tx.delete(table).where(eq(table.workshop, DEMO));
    return standing?.count ?? 0;
  });
}
