import type { EventMark, LogEvent } from '#workshop';
import { type SQL, and, asc, desc, eq, gte, lt, sql } from 'drizzle-orm';
import type { EventsAsked } from '../asked.ts';
import type { Bench } from '../database.ts';
import { event } from '../schema.ts';
import { type Chain, chainOf } from './chain.ts';
import { eventOf } from './event-text.ts';

/** Events gone through at a time where each has to be looked into. */
const SCANNED = 200;

/** Events of an instrument, newest first; of one taken back too, since its log is kept. */
export async function listEvents({ db }: Bench, id: string, asked: EventsAsked = {}): Promise<readonly LogEvent[]> {
  const chain = await chainOf(db, id);
  const { limit = 100, matches } = asked;
  const page = async (before: number | undefined, rows: number): Promise<readonly LogEvent[]> =>
    (await db.select({ text: event.text, hash: event.hash, undoneBy: event.undoneBy }).from(event).where(wanted(chain, { ...asked, before })).orderBy(desc(event.seq)).limit(rows)).map(eventOf);
  if (matches === undefined) return await page(asked.before, limit);
  const found: LogEvent[] = [];
  let { before } = asked;
  while (found.length < limit) {
    const scanned = await page(before, SCANNED);
    found.push(...scanned.filter(matches));
    before = scanned.at(-1)?.seq;
    if (scanned.length < SCANNED) break;
  }
  return found.slice(0, limit);
}

/** Every event of an instrument as the days of its log are told from it, oldest first; no event is read for it. */
export async function listEventMarks({ db }: Bench, id: string): Promise<readonly EventMark[]> {
  const chain = await chainOf(db, id);
  const stands = sql`${event.undoes} is null and ${event.undoneBy} is null`;
  return await db.select({
    seq: event.seq, at: event.at,
    entities: sql<string[]>`array(select distinct split_part(a, '/', 1) from unnest(${event.touched}) a)`,
    opened: sql<number | null>`case when ${stands} then (select max(split_part(a, '/', 2)::int) from unnest(${event.touched}) a where starts_with(a, 'cycle/')) end`,
  }).from(event).where(wanted(chain, {})).orderBy(asc(event.seq));
}

function wanted({ workshop, instrument }: Chain, { before, since, what, about }: EventsAsked): SQL | undefined {
  return and(
    eq(event.workshop, workshop), eq(event.instrument, instrument),
    before === undefined ? undefined : lt(event.seq, before),
    since === undefined ? undefined : gte(event.seq, since),
    what === undefined ? undefined : sql`exists (select 1 from unnest(${event.touched}) a where starts_with(a, ${`${what}/`}))`,
    about === undefined ? undefined : sql`exists (select 1 from unnest(${event.touched} || ${event.used}) a where a = ${about} or starts_with(a, ${`${about}/`}))`,
  );
}
