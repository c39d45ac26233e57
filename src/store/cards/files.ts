import { type ActionTerms, type Instrument, type Observation, type ScaleTerms, type TouchIntent, type TuningPass, type TuningTerms, type WeighingSession, actionTermsSchema, observationSchema, sessionSchema, tuningTermsSchema } from '#instrument';
import { type Answer, type CareCard, type Estimate, type PaperRecord, type Quote, type RoomRecord, type WorkItem, paperRecordSchema, careCardSchema, workItemSchema } from '#workshop';
import { type SQL, and, eq, inArray, sql } from 'drizzle-orm';
import { DEMO } from '../bench-store.ts';
import type { Bench } from '../database.ts';
import { type Chain, chainOf } from '../log/chain.ts';
import { card, chainHead, reading } from '../schema.ts';
import { cardThere, cardsOf } from './card.ts';

/** Part of the list of instruments: so many of them at the most, and those whose name holds some words. */
export interface PianoPage {
  readonly limit?: number | undefined;
  readonly words?: string | undefined;
}

const isInstrument = and(eq(card.entity, 'instrument'), eq(card.standing, true));

/** Instruments in the book, the one written at last first: all of them, or a page. */
export async function listPianos({ db }: Bench, { limit, words }: PianoPage = {}): Promise<Answer<'listPianos'>['pianos']> {
  const query = db.select({ body: card.body, at: chainHead.at }).from(chainHead)
    .innerJoin(card, and(eq(chainHead.workshop, card.workshop), eq(chainHead.instrument, card.instrument)))
    .where(and(isInstrument, named(words)))
    .orderBy(sql`${chainHead.at} desc nulls last`, chainHead.instrument).$dynamic();
  const rows = await (limit === undefined ? query : query.limit(limit));
  const instruments = rows.map(({ body }) => body as Instrument);
  const counts = await countReadings(db, limit === undefined ? undefined : instruments.map(({ id }) => id));
  return rows.map(({ at }, index) => {
    const instrument = instruments[index] as Instrument;
    return { instrument, lastEventAt: at?.toISOString() ?? null, readingCounts: { found: 0, planned: 0, finished: 0, ...counts.get(instrument.id) } };
  });
}

/** How many instruments there are, by name where words are given, and whether any is of the demonstration. */
export async function countPianos({ db }: Bench, words?: string): Promise<{ readonly total: number; readonly demo: boolean }> {
  const rows = await db.select({ workshop: card.workshop, total: sql<number>`count(*)::int`, named: sql<number>`(count(*) filter (where ${named(words) ?? sql`true`}))::int` }).from(card).where(isInstrument).groupBy(card.workshop);
  return { total: rows.reduce((sum, row) => sum + row.named, 0), demo: rows.some(({ workshop, total }) => workshop === DEMO && total > 0) };
}

/** The names of all instruments by their ids, and nothing else of them, in no order. */
export async function listPianoNames({ db }: Bench): Promise<Answer<'listPianoNames'>['pianos']> {
  // Two lists put together by the database: ten thousand rows one by one take longer to tell than to find.
  const all = db.select({ id: card.instrument, name: sql<string>`${card.body}->>'name'`.as('name') }).from(card).where(isInstrument).offset(0).as('all_names');
  const [row] = await db.select({ ids: sql<string[] | null>`json_agg(${all.id})`, names: sql<string[] | null>`json_agg(${all.name})` }).from(all);
  return (row?.ids ?? []).map((id, index) => ({ id, name: row?.names?.[index] ?? '' }));
}

function named(words: string | undefined): SQL | undefined {
  if (words === undefined || words.trim() === '') return undefined;
  return sql`${card.body}->>'name' ilike ${`%${words.trim().replaceAll(/[\\%_]/gu, String.raw`\$&`)}%`}`;
}

/** Standing readings of the current cycle by state, of some instruments or of all. */
async function countReadings(db: Bench['db'], ids?: readonly string[]): Promise<ReadonlyMap<string, Readonly<Record<string, number>>>> {
  if (ids?.length === 0) return new Map();
  const rows = await db.select({ instrument: reading.instrument, state: reading.state, count: sql<number>`count(*)::int` }).from(reading)
    .innerJoin(card, and(eq(card.workshop, reading.workshop), eq(card.instrument, reading.instrument), eq(card.entity, 'instrument')))
    .where(and(eq(reading.standing, true), eq(reading.cycle, sql`(${card.body}->>'cycle')::int`), ids === undefined ? undefined : inArray(reading.instrument, [...ids])))
    .groupBy(reading.instrument, reading.state);
  const counts = new Map<string, Record<string, number>>();
  for (const { instrument, state, count } of rows) counts.set(instrument, { ...counts.get(instrument), [state]: count });
  return counts;
}

/** One instrument and all that is kept of it, the readings apart. */
export async function getPiano({ db }: Bench, id: string): Promise<Answer<'getPiano'>> {
  const chain = await chainOf(db, id);
  const instrument = await cardThere<Instrument>(db, chain, 'instrument', id);
  return {
    instrument,
    // A session kept by an earlier version does not state what could not be stated then.
    sessions: (await cardsOf<WeighingSession>(db, chain, 'session')).map((session) => sessionSchema.parse(session)),
    intents: await byCycle<TouchIntent>(db, chain, 'intent'),
    scales: await byCycle<ScaleTerms>(db, chain, 'scale'),
    // Terms kept by an earlier version do not state what could not be stated then.
    actions: mapped(await byCycle<ActionTerms>(db, chain, 'action'), (terms) => actionTermsSchema.parse(terms)),
    tunings: mapped(await byCycle<TuningTerms>(db, chain, 'tuning'), (terms) => tuningTermsSchema.parse(terms)),
    passes: [...(await cardsOf<TuningPass>(db, chain, 'pass'))],
    // What was seen and jobs kept by an earlier version do not state what could not be stated then.
    observations: (await cardsOf<Observation>(db, chain, 'observation')).map((seen) => observationSchema.parse(seen)),
    work: (await cardsOf<WorkItem>(db, chain, 'work')).map((item) => workItemSchema.parse(item)),
    estimates: await byCycle<Estimate>(db, chain, 'estimate'),
    rooms: [...(await cardsOf<RoomRecord>(db, chain, 'room'))],
    quotes: [...(await cardsOf<Quote>(db, chain, 'quote'))],
    papers: (await cardsOf<PaperRecord>(db, chain, 'paper')).map((record) => paperRecordSchema.parse(record)),
    care: (await cardsOf<CareCard>(db, chain, 'care')).map((one) => careCardSchema.parse(one)),
    head: { seq: chain.seq, hash: chain.hash },
  };
}

/** The one card of its kind that each cycle has, by the number of the cycle. */
async function byCycle<T>(db: Bench['db'], chain: Chain, entity: 'intent' | 'scale' | 'action' | 'tuning' | 'estimate'): Promise<Record<string, T>> {
  const rows = await db.select({ place: card.place, body: card.body }).from(card)
    .where(and(eq(card.workshop, chain.workshop), eq(card.instrument, chain.instrument), eq(card.entity, entity), eq(card.standing, true)));
  return Object.fromEntries(rows.map(({ place, body }) => [place.slice(1), body as T]));
}

function mapped<T>(byKey: Readonly<Record<string, T>>, turn: (one: T) => T): Record<string, T> {
  return Object.fromEntries(Object.entries(byKey).map(([key, one]) => [key, turn(one)]));
}
