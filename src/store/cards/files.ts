import { type ActionTerms, type Instrument, type Observation, type ScaleTerms, type TouchIntent, type TuningPass, type TuningTerms, type WeighingSession, actionTermsSchema, sessionSchema, tuningTermsSchema } from '#instrument';
import type { Answer, WorkItem } from '#workshop';
import { and, desc, eq, sql } from 'drizzle-orm';
import type { Bench } from '../database.ts';
import { type Chain, chainOf } from '../log/chain.ts';
import { card, chainHead, event, reading } from '../schema.ts';
import { cardThere, cardsOf } from './card.ts';

/** Every instrument in the book, the one written at last first. */
export async function listPianos({ db }: Bench): Promise<Answer<'listPianos'>['pianos']> {
  const rows = await db.select({ body: card.body, at: event.at }).from(card)
    .innerJoin(chainHead, and(eq(chainHead.workshop, card.workshop), eq(chainHead.instrument, card.instrument)))
    .leftJoin(event, and(eq(event.workshop, chainHead.workshop), eq(event.instrument, chainHead.instrument), eq(event.seq, chainHead.seq)))
    .where(and(eq(card.entity, 'instrument'), eq(card.standing, true)))
    .orderBy(desc(event.at), card.instrument);
  const counts = await countReadings(db);
  return rows.map(({ body, at }) => {
    const instrument = body as Instrument;
    return { instrument, lastEventAt: at?.toISOString() ?? null, readingCounts: { found: 0, planned: 0, finished: 0, ...counts.get(instrument.id) } };
  });
}

/** Standing readings of each instrument's current cycle, by state. */
async function countReadings(db: Bench['db']): Promise<ReadonlyMap<string, Readonly<Record<string, number>>>> {
  const rows = await db.select({ instrument: reading.instrument, state: reading.state, count: sql<number>`count(*)::int` }).from(reading)
    .innerJoin(card, and(eq(card.workshop, reading.workshop), eq(card.instrument, reading.instrument), eq(card.entity, 'instrument')))
    .where(and(eq(reading.standing, true), eq(reading.cycle, sql`(${card.body}->>'cycle')::int`)))
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
    observations: [...(await cardsOf<Observation>(db, chain, 'observation'))],
    work: [...(await cardsOf<WorkItem>(db, chain, 'work'))],
    head: { seq: chain.seq, hash: chain.hash },
  };
}

/** The one card of its kind that each cycle has, by the number of the cycle. */
async function byCycle<T>(db: Bench['db'], chain: Chain, entity: 'intent' | 'scale' | 'action' | 'tuning'): Promise<Record<string, T>> {
  const rows = await db.select({ place: card.place, body: card.body }).from(card)
    .where(and(eq(card.workshop, chain.workshop), eq(card.instrument, chain.instrument), eq(card.entity, entity), eq(card.standing, true)));
  return Object.fromEntries(rows.map(({ place, body }) => [place.slice(1), body as T]));
}

function mapped<T>(byKey: Readonly<Record<string, T>>, turn: (one: T) => T): Record<string, T> {
  return Object.fromEntries(Object.entries(byKey).map(([key, one]) => [key, turn(one)]));
}
