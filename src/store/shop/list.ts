import { type ShopCard, type StandingTrade, shopCardSchema, tradeKinds } from '#workshop';
import { type SQL, and, asc, eq, inArray, notInArray, sql } from 'drizzle-orm';
import type { CardsAsked } from '../asked.ts';
import { StoreFailure } from '../bench-store.ts';
import type { Bench, Database, Transaction } from '../database.ts';
import type { Chain } from '../log/chain.ts';
import { card, event, personal } from '../schema.ts';

/** Cards of the shop, those that stand and those that were withdrawn after they had stood. */
export interface ShopCards {
  readonly cards: readonly ShopCard[];
  readonly withdrawn: readonly ShopCard[];
}

/** What a card that is open no longer says of itself. */
const CLOSED = ['done', 'cancelled', 'answered', 'won', 'lost', 'ended', 'received'] as const;

/** Cards of the shop's own book and of the demonstration's, in the order they were made. */
export async function listShopCards({ db }: Bench, asked: CardsAsked = {}): Promise<ShopCards> {
  return await shopCardsIn(db, askedFor(asked));
}

function askedFor({ kinds, pianoId, person, isOpen = false }: CardsAsked): SQL | undefined {
  const field = (name: string): SQL => sql`${card.body}->>${sql.raw(`'${name}'`)}`;
  return and(
    kinds === undefined ? undefined : inArray(field('kind'), [...kinds]),
    pianoId === undefined ? undefined : sql`coalesce(${field('pianoId')}, ${pianoId}) = ${pianoId}`,
    person === undefined ? undefined : sql`${field('person')} = ${person}`,
    isOpen ? and(notInArray(sql`coalesce(${field('status')}, '')`, [...CLOSED]), sql`${field('returnedOn')} is null`) : undefined,
  );
}

/** The same, within a transaction. */
export async function shopCardsIn(db: Database | Transaction, where?: SQL): Promise<ShopCards> {
  const rows = await rowsWhere(db, where);
  const of = (standing: boolean): readonly ShopCard[] => rows.filter((row) => row.standing === standing).map(keptOf);
  return { cards: of(true), withdrawn: of(false) };
}

/** One standing card. @throws StoreFailure when there is none. */
export async function shopCardThere(db: Database | Transaction, id: string): Promise<ShopCard> {
  const [row] = await rowsWhere(db, and(eq(card.place, id), eq(card.standing, true)));
  if (row === undefined) throw noCard(id);
  return keptOf(row);
}

/** What was put in and taken out of one thing in stock, a move left out of the sum where it is being changed. */
export async function moveAmounts(tx: Transaction, chain: Chain, stock: string, except?: string): Promise<readonly number[]> {
  const rows = await tx.select({ place: card.place, amount: sql<number>`(${card.body}->>'amount')::float8` }).from(card)
    .where(and(inBook(chain), sql`${card.body}->>'kind' = 'stockMove'`, sql`${card.body}->>'stock' = ${stock}`));
  return rows.filter(({ place }) => place !== except).map(({ amount }) => amount);
}

/** Purchases and sales of pianos that stand in a book; what is personal stays behind its reference. */
export async function tradesIn(tx: Transaction, chain: Chain): Promise<readonly StandingTrade[]> {
  const rows = await tx.select({ body: card.body }).from(card).where(and(inBook(chain), inArray(sql`${card.body}->>'kind'`, [...tradeKinds])));
  return rows.map(({ body }) => body as unknown as StandingTrade);
}

/** When the clock that runs for somebody was started; nothing where none runs. */
export async function runningClock(tx: Transaction, chain: Chain, who: string | null, except?: string): Promise<string | undefined> {
  const rows = await tx.select({ place: card.place, started: sql<string>`${card.body}->>'startedAt'` }).from(card)
    .where(and(inBook(chain), sql`${card.body}->>'kind' = 'hours'`, sql`${card.body}->>'startedAt' is not null`, sql`${card.body}->>'stoppedAt' is null`, sql`${card.body}->>'hours' is null`, sql`${card.body}->>'who' is not distinct from ${who}::text`));
  return rows.find(({ place }) => place !== except)?.started;
}

/** Which of some jobs a piano has. */
export async function jobsKnown(tx: Transaction, pianoId: string, jobs: readonly string[]): Promise<ReadonlySet<string>> {
  if (jobs.length === 0) return new Set();
  const rows = await tx.select({ place: card.place }).from(card).where(and(eq(card.instrument, pianoId), eq(card.entity, 'work'), eq(card.standing, true), inArray(card.place, [...jobs])));
  return new Set(rows.map(({ place }) => place));
}

function inBook({ workshop, instrument }: Chain): SQL | undefined {
  return and(eq(card.workshop, workshop), eq(card.instrument, instrument), eq(card.entity, 'shop'), eq(card.standing, true));
}

/** The workshop whose book a standing card is in. @throws StoreFailure when there is none. */
export async function workshopOfCard(db: Database | Transaction, id: string): Promise<string> {
  const [row] = await db.select({ workshop: card.workshop }).from(card).where(and(eq(card.entity, 'shop'), eq(card.place, id), eq(card.standing, true)));
  if (row === undefined) throw noCard(id);
  return row.workshop;
}

/** Says that a card is not there. */
export function noCard(id: string): StoreFailure {
  return new StoreFailure('notFound', `There is no card ${id}.`);
}

type Row = Awaited<ReturnType<typeof rowsWhere>>[number];

async function rowsWhere(db: Database | Transaction, where?: SQL) {
  return await db.select({ workshop: card.workshop, body: card.body, standing: card.standing, madeSeq: card.madeSeq, changedSeq: card.changedSeq, changedAt: event.at, details: personal.body }).from(card)
    .innerJoin(event, and(eq(event.workshop, card.workshop), eq(event.instrument, card.instrument), eq(event.seq, card.changedSeq)))
    .leftJoin(personal, and(eq(personal.workshop, card.workshop), eq(personal.reference, sql`${card.body}->>'details'`)))
    .where(and(eq(card.entity, 'shop'), where)).orderBy(asc(card.workshop), asc(card.madeSeq), asc(card.madeIndex));
}

function keptOf({ workshop, body, madeSeq, changedSeq, changedAt, details }: Row): ShopCard {
  return shopCardSchema.parse({ ...body, workshopId: workshop, changedAt: changedAt.toISOString(), sequence: changedSeq - madeSeq, details });
}
