import type { Reading } from '#instrument';
import { placeText } from '#workshop';
import { type SQL, and, asc, eq, inArray, sql } from 'drizzle-orm';
import type { Database, Transaction } from '../database.ts';
import type { Chain } from '../log/chain.ts';
import { reading } from '../schema.ts';

type Row = typeof reading.$inferSelect;

/** Rows per insert: the protocol counts parameters in sixteen bits. */
const CHUNK = 1000;

/** One place where another reading comes to stand, or none. */
export interface Move {
  readonly before: Reading | null;
  readonly after: Reading | null;
}

/** Adds the new readings of an event. What stood at their places is superseded, or withdrawn where nothing new came; none is lost. */
export async function addReadings(tx: Transaction, chain: Chain, seq: number, moves: readonly Move[]): Promise<void> {
  const { workshop, instrument } = chain;
  const { leaving, coming } = sides(moves);
  if (leaving.length > 0) {
    await tx.execute(sql`
      update reading set standing = false, withdrawn = move."to" is null, superseded_by = move."to" from ${pairs(leaving)}
      where reading.workshop = ${workshop} and reading.instrument = ${instrument} and reading.id = move."from"`);
  }
  const rows = coming.map((one) => ({ ...one, workshop, instrument, seq, place: placeText(one), at: new Date(one.at), typedAt: one.typedAt === undefined ? null : new Date(one.typedAt), standing: true, withdrawn: false, supersededBy: null }));
  for (let from = 0; from < rows.length; from += CHUNK) await tx.insert(reading).values(rows.slice(from, from + CHUNK));
}

/** Lets readings that were taken before stand again, or none. One that gives way to a later reading is superseded by it; else it is withdrawn. */
export async function moveStanding(tx: Transaction, chain: Chain, moves: readonly Move[]): Promise<void> {
  const { workshop, instrument } = chain;
  const { leaving, coming } = sides(moves);
  await tx.execute(sql`
    update reading set standing = false, withdrawn = coalesce(later.seq < reading.seq, true), superseded_by = case when later.seq > reading.seq then later.id end
    from ${pairs(leaving)} left join reading as later on later.workshop = ${workshop} and later.instrument = ${instrument} and later.id = move."to"
    where reading.workshop = ${workshop} and reading.instrument = ${instrument} and reading.id = move."from"`);
  await tx.execute(sql`
    update reading set standing = true, withdrawn = false, superseded_by = null
    where workshop = ${workshop} and instrument = ${instrument} and id = any(${sql.param(coming.map(({ id }) => id))}::text[])`);
}

function sides(moves: readonly Move[]): { readonly leaving: readonly { readonly from: string; readonly to: string | null }[]; readonly coming: readonly Reading[] } {
  return {
    leaving: moves.flatMap(({ before, after }) => (before === null ? [] : [{ from: before.id, to: after?.id ?? null }])),
    coming: moves.flatMap(({ after }) => (after === null ? [] : [after])),
  };
}

/** The readings that leave their places and what comes there, as rows of a query. */
function pairs(leaving: readonly { readonly from: string; readonly to: string | null }[]): SQL {
  return sql`unnest(${sql.param(leaving.map(({ from }) => from))}::text[], ${sql.param(leaving.map(({ to }) => to))}::text[]) as move("from", "to")`;
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

/** The readings of some ids that still stand, by id. */
export async function standingById(tx: Transaction, chain: Chain, ids: readonly string[]): Promise<ReadonlyMap<string, Reading>> {
  const standing = new Map<string, Reading>();
  for (let from = 0; from < ids.length; from += CHUNK) {
    const rows = await tx.select().from(reading).where(and(ofChain(chain), eq(reading.standing, true), inArray(reading.id, ids.slice(from, from + CHUNK))));
    for (const row of rows) standing.set(row.id, readingOf(row));
  }
  return standing;
}

/** A row as the reading it keeps. */
export function readingOf(row: Row): Reading {
  const { id, cycle, state, quantity, scope, index, repeat, typed, value, outcome, uncertainty, basis, remark, sessionId, by } = row;
  return { id, cycle, state, quantity, scope, index, repeat, typed, value, outcome, uncertainty, basis, remark, sessionId, at: row.at.toISOString(), ...(row.typedAt === null ? {} : { typedAt: row.typedAt.toISOString() }), by };
}

/** All readings of an instrument. */
export function ofChain(chain: Chain): SQL | undefined {
  return and(eq(reading.workshop, chain.workshop), eq(reading.instrument, chain.instrument));
}
