import type { Change } from '#workshop';
import { type SQL, and, asc, eq } from 'drizzle-orm';
import { StoreFailure } from '../bench-store.ts';
import type { Database, Transaction } from '../database.ts';
import type { Chain } from '../log/chain.ts';
import { card } from '../schema.ts';

export type CardKind = (typeof card.$inferSelect)['entity'];
type Body = Record<string, unknown>;

/** The bodies of an instrument's standing cards of one kind, in the order they were made. */
export async function cardsOf<T>(db: Database | Transaction, chain: Chain, entity: CardKind): Promise<readonly T[]> {
  const rows = await db.select({ body: card.body }).from(card).where(and(ofChain(chain), eq(card.entity, entity), eq(card.standing, true))).orderBy(asc(card.madeSeq), asc(card.madeIndex));
  return rows.map(({ body }) => body as T);
}

/** The body of one standing card, or nothing. */
export async function cardAt<T>(db: Database | Transaction, chain: Chain, entity: CardKind, place: string): Promise<T | undefined> {
  const [row] = await db.select({ body: card.body }).from(card).where(and(ofCard(chain, entity, place), eq(card.standing, true)));
  return row?.body as T | undefined;
}

/** The body of one standing card. @throws StoreFailure when there is none. */
export async function cardThere<T>(db: Database | Transaction, chain: Chain, entity: CardKind, place: string): Promise<T> {
  const body = await cardAt<T>(db, chain, entity, place);
  if (body === undefined) throw new StoreFailure('notFound', `There is no ${entity} ${place}.`);
  return body;
}

/** Makes, changes or takes away the card a change speaks of. A change of fields carries only those. */
export async function projectCard(tx: Transaction, chain: Chain, change: Change, made: { readonly seq: number; readonly index: number }): Promise<void> {
  const { entity, place } = change;
  if (entity === 'reading') throw new Error('a reading is no card');
  if (change.after === null) {
    await tx.update(card).set({ standing: false, changedSeq: made.seq }).where(ofCard(chain, entity, place));
    return;
  }
  const body = await bodyAfter(tx, chain, entity, change);
  const { workshop, instrument } = chain;
  await tx
    .insert(card)
    .values({ workshop, instrument, entity, place, body, standing: true, madeSeq: made.seq, madeIndex: made.index, changedSeq: made.seq })
    .onConflictDoUpdate({ target: [card.workshop, card.instrument, card.entity, card.place], set: { body, standing: true, changedSeq: made.seq } });
}

/** A change of fields lands on the others; what is asked of a stay and a new card come whole. */
async function bodyAfter(tx: Transaction, chain: Chain, entity: CardKind, change: Change): Promise<Body> {
  const after = change.after as Body;
  if (entity === 'intent' || entity === 'scale' || entity === 'action' || entity === 'tuning' || entity === 'estimate' || change.before === null) return after;
  return { ...(await cardThere<Body>(tx, chain, entity, change.place)), ...after };
}

/** The change that sets some fields of a card, carrying only those that differ; nothing when none does. */
export function fieldChange(entity: CardKind, place: string, body: object, wanted: object): Change | undefined {
  const now = body as Body;
  const differing = Object.entries(wanted).filter(([field, value]) => value !== undefined && JSON.stringify(now[field]) !== JSON.stringify(value));
  if (differing.length === 0) return undefined;
  return { entity, place, before: Object.fromEntries(differing.map(([field]) => [field, now[field]])), after: Object.fromEntries(differing) };
}

function ofChain(chain: Chain): SQL | undefined {
  return and(eq(card.workshop, chain.workshop), eq(card.instrument, chain.instrument));
}

function ofCard(chain: Chain, entity: CardKind, place: string): SQL | undefined {
  return and(ofChain(chain), eq(card.entity, entity), eq(card.place, place));
}
