import type { Answer } from '#workshop';
import { and, asc, eq, gt, lte } from 'drizzle-orm';
import type { Database } from '../database.ts';
import { event } from '../schema.ts';
import { type Chain, chainOf } from './chain.ts';
import { type EventRecord, hashOf, readText } from './event-text.ts';

type Row = typeof event.$inferSelect;
const PAGE = 500;

/** Goes through a whole chain from its stored texts: every hash, every link, every number, and the end. */
export async function audit(db: Database, id: string): Promise<Answer<'audit'>> {
  const chain = await chainOf(db, id);
  let link = { seq: 0, hash: '' };
  for (let rows = await page(db, chain, link.seq); rows.length > 0; rows = await page(db, chain, link.seq)) {
    for (const row of rows) {
      if (!holds(chain, link, row)) return { whole: false, events: chain.seq, firstBrokenSeq: link.seq + 1, headHash: chain.hash };
      link = { seq: row.seq, hash: row.hash };
    }
  }
  const whole = link.seq === chain.seq && link.hash === chain.hash;
  return { whole, events: chain.seq, firstBrokenSeq: whole ? null : Math.min(link.seq + 1, chain.seq), headHash: chain.hash };
}

async function page(db: Database, chain: Chain, after: number): Promise<readonly Row[]> {
  return await db.select().from(event)
    .where(and(eq(event.workshop, chain.workshop), eq(event.instrument, chain.instrument), gt(event.seq, after), lte(event.seq, chain.seq)))
    .orderBy(asc(event.seq)).limit(PAGE);
}

/** One event holds when its text hashes to what is stored, names the event before it, and says what the columns say. */
function holds(chain: Chain, before: { readonly seq: number; readonly hash: string }, row: Row): boolean {
  if (hashOf(row.text) !== row.hash) return false;
  const record = tryRead(row.text);
  return record !== undefined && record.prev === before.hash && record.seq === before.seq + 1 && record.seq === row.seq && record.undoes === row.undoes
    && record.at === row.at.toISOString() && record.workshop === chain.workshop && record.instrument === chain.instrument;
}

function tryRead(text: string): EventRecord | undefined {
  try {
    return readText(text);
  } catch {
    return undefined;
  }
}
