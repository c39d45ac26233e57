import { type OpenWork, type PersonExport, type Quote, type ShopCard, careCardSchema, openWith, pianosOwnedBy, quoteSchema } from '#workshop';
import { and, asc, eq, inArray, like, or, sql } from 'drizzle-orm';
import { alias } from 'drizzle-orm/pg-core';
import { StoreFailure } from '../bench-store.ts';
import { cardThere } from '../cards/card.ts';
import type { Bench, Database, Transaction } from '../database.ts';
import { eventOf } from '../log/event-text.ts';
import { card, event, personal } from '../schema.ts';
import { carryOut } from '../write.ts';
import { lockBook } from './book.ts';
import { noCard, shopCardThere, shopCardsIn, workshopOfCard } from './list.ts';

/** Everything the book holds of a person: their card, each version of what is personal, the cards that name them, the events. */
export async function exportPerson(bench: Bench, id: string): Promise<PersonExport> {
  const { db } = bench;
  const contact = await contactThere(bench, id);
  const { cards } = await shopCardsIn(db);
  const named = cards.filter((one) => 'person' in one && one.person === id);
  const versions = await db.select({ body: personal.body }).from(personal).where(and(eq(personal.workshop, contact.workshopId), eq(personal.person, id)));
  const owned = pianosOwnedBy(id, cards);
  const care = (await careIn(db, contact.workshopId)).filter(({ pianoId, card: told }) => owned.has(pianoId) || (told.kind === 'move' && told.mover === id));
  const events = await db.select().from(event)
    .where(and(eq(event.workshop, contact.workshopId), or(...[id, ...named.map((one) => one.id)].map((one) => like(event.text, `%${one}%`)))))
    .orderBy(asc(event.at), asc(event.instrument), asc(event.seq));
  return { contact, cards: named, quotes: (await quotesIn(db, contact.workshopId)).filter(({ customer }) => customer === id), care, personal: versions.map(({ body }) => body), events: events.map(eventOf) };
}

/** Forgets a person: all that is personal of them goes, and no chain breaks. Refused while something is open with them, each thing by name. */
export async function erasePerson(bench: Bench, id: string, by: string): Promise<ShopCard> {
  return await bench.db.transaction(async (tx) => {
    const workshop = await workshopOfCard(tx, id);
    const chain = await lockBook(tx, workshop);
    const { kind, details } = await cardThere<{ kind: string; details: string | null }>(tx, chain, 'shop', id);
    if (kind !== 'contact' || details === null) throw noCard(id);
    const issues = openWith(id, (await shopCardsIn(tx)).cards, { jobs: await openJobs(tx, workshop), quotes: await quotesIn(tx, workshop), moves: await movesIn(tx, workshop) });
    if (issues.length > 0) throw new StoreFailure('refused', 'Something is still open with this person.', issues);
    await tx.delete(personal).where(and(eq(personal.workshop, workshop), eq(personal.person, id)));
    return await carryOut({ tx, chain, at: bench.clock() }, by, {
      kind: 'person.erased',
      changes: [{ entity: 'shop', place: id, before: { details }, after: { details: null } }],
      answer: () => shopCardThere(tx, id),
    });
  });
}

async function contactThere({ db }: Bench, id: string): Promise<ShopCard> {
  const contact = await shopCardThere(db, id);
  if (contact.kind !== 'contact') throw noCard(id);
  return contact;
}

/** How many jobs are not yet done, by instrument. */
async function openJobs(tx: Transaction, workshop: string): Promise<ReadonlyMap<string, number>> {
  const rows = await tx.select({ instrument: card.instrument, count: sql<number>`count(*)::int` }).from(card)
    .where(and(eq(card.workshop, workshop), eq(card.entity, 'work'), eq(card.standing, true), sql`${card.body}->>'status' = 'open'`)).groupBy(card.instrument);
  return new Map(rows.map(({ instrument, count }) => [instrument, count]));
}

/** Every quote of a workshop that stands. */
async function quotesIn(db: Database | Transaction, workshop: string): Promise<readonly Quote[]> {
  const rows = await db.select({ body: card.body }).from(card).where(and(eq(card.workshop, workshop), eq(card.entity, 'quote'), eq(card.standing, true)));
  return rows.map(({ body }) => quoteSchema.parse(body));
}

/** Plans of care and moves of the pianos of a workshop, each with its piano. */
async function careIn(db: Database | Transaction, workshop: string): Promise<PersonExport['care']> {
  const piano = alias(card, 'piano');
  const rows = await db.select({ pianoId: card.instrument, piano: sql<string>`${piano.body}->>'name'`, body: card.body }).from(card)
    .innerJoin(piano, and(eq(piano.workshop, card.workshop), eq(piano.instrument, card.instrument), eq(piano.entity, 'instrument')))
    .where(and(eq(card.workshop, workshop), eq(card.entity, 'care'), eq(card.standing, true), eq(piano.standing, true), inArray(sql`${card.body}->>'kind'`, ['plan', 'move'])))
    .orderBy(asc(card.instrument), asc(card.madeSeq));
  return rows.map(({ body, ...where }) => ({ ...where, card: careCardSchema.parse(body) }));
}

async function movesIn(tx: Transaction, workshop: string): Promise<OpenWork['moves']> {
  return (await careIn(tx, workshop)).flatMap(({ card: told, ...where }) => (told.kind === 'move' ? [{ ...told, ...where }] : []));
}
