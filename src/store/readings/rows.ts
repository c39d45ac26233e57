import type { Reading } from '#instrument';
import { placeText } from '#workshop';
import { type SQL, and, asc, eq, inArray, sql } from 'drizzle-orm';
import type { Database, Transaction } from '../database.ts';
import type { Chain } from '../log/chain.ts';
import { reading } from '../schema.ts';

type Row = typeof reading.$inferSelect;

/** Rows per insert: the protocol counts parameters in sixteen bits. */
const CHUNK = 1000;

/** Adds readings that do not stand yet. */
export async function addReadings(tx: Transaction, chain: Chain, seq: number, readings: readonly Reading[]): Promise<void> {
  const { workshop, instrument } = chain;
  const rows = readings.map((one) => ({ ...one, workshop, instrument, seq, place: placeText(one), at: new Date(one.at), standing: false, withdrawn: false, supersededBy: null }));
  for (let from = 0; from < rows.length; from += CHUNK) await tx.insert(reading).values(rows.slice(from, from + CHUNK));
}

/** One place where another reading comes to stand, or none. */
export interface Move {
  readonly before: Reading | null;
  readonly after: Reading | null;
}

/** Lets other readings stand. One that gives way to a later reading is superseded by it; else it is withdrawn. Neither is lost. */
export async function moveStanding(tx: Transaction, chain: Chain, moves: readonly Move[]): Promise<void> {
  const leaving = moves.flatMap(({ before, after }) => (before === null ? [] : [{ from: before.id, to: after?.id ?? null }]));
  const coming = moves.flatMap(({ after }) => (after === null ? [] : [after.id]));
  await tx.execute(sql`
    update reading set standing = false, withdrawn = coalesce(later.seq < reading.seq, true), superseded_by = case when later.seq > reading.seq then later.id end
    from unnest(${sql.param(leaving.map(({ from }) => from))}::text[], ${sql.param(leaving.map(({ to }) => to))}::text[]) as move("from", "to")
      left join reading as later on later.workshop = ${chain.workshop} and later.instrument = ${chain.instrument} and later.id = move."to"
    where reading.workshop = ${chain.workshop} and reading.instrument = ${chain.instrument} and reading.id = move."from"`);
  await tx.execute(sql`
    update reading set standing = true, withdrawn = false, superseded_by = null
    where workshop = ${chain.workshop} and instrument = ${chain.instrument} and id = any(${sql.param(coming)}::text[])`);
}

/** Standing readings of one cycle, in the order of their places. */
export async function standingReadings(db: Database | Transaction, chain: Chain, cycle: number): Promise<readonly Reading[]> {
  const rows = await db.select().from(reading).where(and(ofChain(chain), eq(reading.cycle, cycle), eq(reading.standing, true)))
    .orderBy(asc(reading.state), asc(reading.quantity), asc(reading.index), asc(reading.repeat));
  return rows.map(readingOf);
}

/** The readings that stand at some places, by place. */
export async function standingAt(tx: Transaction, chain: Chain, places: readonly string[]): Promise<ReadonlyMap<string, Reading>> {
  const standing = new Map<string, Reading>();
  for (let from = 0; from < places.length; from += CHUNK) {
    const rows = await tx.select().from(reading).where(and(ofChain(chain), eq(reading.standing, true), inArray(reading.place, places.slice(from, from + CHUNK))));
    for (const row of rows) standing.set(row.place, readingOf(row));
  }
  return standing;
}

/** A row as the reading it keeps. */
export function readingOf(row: Row): Reading {
  const { id, cycle, state, quantity, scope, index, repeat, typed, value, outcome, uncertainty, basis, remark, sessionId, by } = row;
  return { id, cycle, state, quantity, scope, index, repeat, typed, value, outcome, uncertainty, basis, remark, sessionId, at: row.at.toISOString(), by };
}

/** All readings of an instrument. */
export function ofChain(chain: Chain): SQL | undefined {
  return and(eq(reading.workshop, chain.workshop), eq(reading.instrument, chain.instrument));
}
