import type { Issue } from '#result';
import { type ShopCard, type ShopCardChange, type ShopCardDraft, type ShopCardGiven, namedBy, olderThanKept, orderIssues, shopCardDraftSchema, shortOf, sumOfAmounts, tradeIssues, withdrawIssues } from '#workshop';
import { and, eq } from 'drizzle-orm';
import { StoreFailure } from '../bench-store.ts';
import { cardAt, cardThere, fieldChange } from '../cards/card.ts';
import { fitting, stated } from '../check.ts';
import type { Bench, Transaction } from '../database.ts';
import type { Chain } from '../log/chain.ts';
import { card, chainHead, personal } from '../schema.ts';
import { unkeptPhotos, unkeptSides } from '../photos.ts';
import { carryOut } from '../write.ts';
import { lockBook } from './book.ts';
import { jobsKnown, moveAmounts, runningClock, shopCardThere, shopCardsIn, tradesIn, workshopOfCard } from './list.ts';

export const REFUSED = 'The card cannot be kept as given.';

/** A card as its events carry it: what is personal is named by a reference, null once it was erased. */
export type Body = Pick<ShopCardGiven, 'kind'> & { readonly person?: string | null; readonly pianoId?: string | null; readonly id: string; readonly at: string; readonly details: string | null };

/** Keeps a card of the shop, in the book of the person or piano it names; one that names nothing in the workshop's own. */
export async function addShopCard(bench: Bench, workshopId: string, draft: ShopCardDraft, by: string): Promise<ShopCard> {
  const wanted = fitting(shopCardDraftSchema, draft, REFUSED);
  return await bench.db.transaction(async (tx) => {
    const chain = await lockBook(tx, await homeOf(tx, wanted, workshopId));
    await check(bench, tx, chain, wanted);
    const [id, at] = [bench.newId(), bench.clock()];
    const { details, ...told } = wanted;
    const body: Body = { ...told, id, at: at.toISOString(), details: await keepPersonal(bench, tx, chain, personOf(wanted, id), details) };
    return await carryOut({ tx, chain, at }, by, {
      kind: 'shop.added',
      changes: [{ entity: 'shop', place: id, before: null, after: body }],
      rests: restsOf(wanted),
      answer: () => shopCardThere(tx, id),
    });
  });
}

/** Changes a card; fields left out stay. What was personal before stays with it until the person is forgotten, so that undo finds it. */
export async function changeShopCard(bench: Bench, cardId: string, change: ShopCardChange, by: string): Promise<ShopCard> {
  return await bench.db.transaction(async (tx) => {
    const chain = await lockBook(tx, await workshopOfCard(tx, cardId));
    const { id, at: madeAt, details: reference, ...told } = await cardThere<Body>(tx, chain, 'shop', cardId);
    const { details: known } = await shopCardThere(tx, cardId);
    if (change.kind !== told.kind) throw refused({ code: 'choice', path: 'kind', given: change.kind, allowed: told.kind, params: { choices: told.kind } });
    if (told.kind === 'contact' && reference === null) throw refused({ code: 'conflict', path: 'details', given: cardId, allowed: 'a person who was not forgotten', params: { reason: 'erased' } });
    const wanted = fitting(shopCardDraftSchema, { ...told, ...(known === null ? {} : { details: known }), ...stated(change) }, REFUSED);
    if (await homeOf(tx, wanted, chain.workshop) !== chain.workshop) throw refused(otherBook('person', cardId));
    await check(bench, tx, chain, wanted, id);
    const { details, ...rest } = wanted;
    const [before, after] = [personOf(told, id), personOf(wanted, id)];
    const isSame = before === after && JSON.stringify(details) === JSON.stringify(known);
    const made = fieldChange('shop', id, { ...told, details: reference }, { ...rest, details: isSame ? reference : await keepPersonal(bench, tx, chain, after, details) });
    return await carryOut({ tx, chain, at: bench.clock() }, by, { kind: 'shop.changed', changes: made === undefined ? [] : [made], rests: restsOf(wanted), answer: () => shopCardThere(tx, id) });
  });
}

/** Withdraws a card; the log keeps it, and undo brings it back. A person is forgotten instead. */
export async function withdrawShopCard(bench: Bench, cardId: string, by: string): Promise<ShopCard> {
  return await bench.db.transaction(async (tx) => {
    const chain = await lockBook(tx, await workshopOfCard(tx, cardId));
    const body = await cardThere<Body>(tx, chain, 'shop', cardId);
    const shown = await shopCardThere(tx, cardId);
    if (body.kind === 'contact') throw refused({ code: 'conflict', path: 'kind', given: 'contact', allowed: 'any card but a person, who is forgotten instead', params: { reason: 'forgetInstead' } });
    const standsOn = body.kind === 'acquisition' ? withdrawIssues(cardId, await tradesIn(tx, chain)) : [];
    if (standsOn.length > 0) throw refused(...standsOn);
    return await carryOut({ tx, chain, at: bench.clock() }, by, { kind: 'shop.withdrawn', changes: [{ entity: 'shop', place: cardId, before: body, after: null }], answer: () => shown });
  });
}

/** Says why a card is not kept. */
export function refused(...issues: readonly Issue[]): StoreFailure {
  return new StoreFailure('refused', REFUSED, issues);
}

/** Whose the personal part of a card is. */
function personOf(wanted: Parameters<typeof namedBy>[0], id: string): string {
  return namedBy(wanted).person ?? id;
}

/** Keeps the personal part of a card outside the log; answers the reference the event carries. */
export async function keepPersonal(bench: Bench, tx: Transaction, { workshop }: Chain, person: string, body: Record<string, unknown>): Promise<string> {
  const reference = bench.newId();
  await tx.insert(personal).values({ workshop, person, reference, body });
  return reference;
}

/** A card rests on the cards it names: none of them can be undone away under it. */
function restsOf(wanted: ShopCardGiven): readonly string[] {
  return namedBy(wanted).cards.map(({ id }) => `shop/${id}`);
}

/** The workshop a card belongs to, by the cards and the piano it names. @throws StoreFailure where one is not there, or they are of two workshops. */
async function homeOf(tx: Transaction, wanted: Parameters<typeof namedBy>[0], workshopId: string): Promise<string> {
  const { cards, pianoId } = namedBy(wanted);
  const homes: (readonly [path: string, id: string, workshop: string])[] = [];
  for (const { path, id } of cards) {
    const [row] = await tx.select({ workshop: card.workshop }).from(card).where(and(eq(card.entity, 'shop'), eq(card.place, id), eq(card.standing, true)));
    if (row === undefined) throw refused(stranger(path, id));
    homes.push([path, id, row.workshop]);
  }
  if (pianoId !== null) {
    const [row] = await tx.select({ workshop: chainHead.workshop }).from(chainHead)
      .innerJoin(card, and(eq(card.workshop, chainHead.workshop), eq(card.instrument, chainHead.instrument), eq(card.entity, 'instrument'), eq(card.standing, true)))
      .where(eq(chainHead.instrument, pianoId));
    if (row === undefined) throw refused(stranger('pianoId', pianoId));
    homes.push(['pianoId', pianoId, row.workshop]);
  }
  const [first] = homes;
  const other = homes.find(([, , workshop]) => workshop !== first?.[2]);
  if (other !== undefined) throw refused(otherBook(other[0], other[1]));
  return first?.[2] ?? workshopId;
}

function stranger(path: string, given: string): Issue {
  return { code: 'unknown', path, given, allowed: 'the id of one in the book', params: { reason: path === 'pianoId' ? 'piano' : path } };
}

function otherBook(path: string, given: string | null): Issue {
  return { code: 'conflict', path, given, allowed: 'things of one workshop: the invented ones of the demonstration keep to themselves', params: { reason: 'otherBook' } };
}

/** Refuses days in the wrong order, cards named that are of another kind, a person who was forgotten, photos that were not kept, more taken out of stock than there is, rules older than those in use, and a stock book that does not hold together. */
async function check(bench: Bench, tx: Transaction, chain: Chain, wanted: ShopCardGiven, cardId?: string): Promise<void> {
  const issues = [...orderIssues(wanted), ...(wanted.kind === 'loan' ? unkeptSides(bench, wanted) : []), ...(wanted.kind === 'shipment' ? (wanted.inHand ?? []).flatMap(({ photos }, index) => unkeptPhotos(bench, photos, `inHand[${String(index)}].photos`)) : [])];
  for (const { path, id, kind } of namedBy(wanted).cards) {
    const body = await cardAt<Body>(tx, chain, 'shop', id);
    if (body?.kind !== kind) issues.push(stranger(path, id));
    else if (kind === 'contact' && body.details === null) issues.push({ code: 'conflict', path, given: id, allowed: 'a person who was not forgotten', params: { reason: 'erased' } });
  }
  if (wanted.kind === 'stockMove') issues.push(...shortOf(wanted, sumOfAmounts(await moveAmounts(tx, chain, wanted.stock, cardId))));
  if (wanted.kind === 'hours') issues.push(...(await hoursIssues(tx, chain, wanted, cardId)));
  if (wanted.kind === 'acquisition' || wanted.kind === 'sale') issues.push(...tradeIssues(wanted, await tradesIn(tx, chain), cardId));
  if (wanted.kind === 'ruleFile') issues.push(...olderThanKept(wanted, (await shopCardsIn(tx)).cards.filter(({ id }) => id !== cardId)));
  if (issues.length > 0) throw refused(...issues);
}

/** Refuses jobs that are not of the piano, and a second clock running for the same person. */
async function hoursIssues(tx: Transaction, chain: Chain, { pianoId, jobs, who, startedAt, stoppedAt, hours }: Extract<ShopCardGiven, { kind: 'hours' }>, cardId?: string): Promise<readonly Issue[]> {
  const known = await jobsKnown(tx, pianoId, jobs);
  const strangers = jobs.flatMap((job, index): readonly Issue[] => (known.has(job) ? [] : [{ code: 'unknown', path: `jobs[${String(index)}]`, given: job, allowed: 'the id of a job of this piano', params: { reason: 'job' } }]));
  if (startedAt === null || stoppedAt !== null || hours !== null) return strangers;
  const running = await runningClock(tx, chain, who, cardId);
  return running === undefined ? strangers : [...strangers, { code: 'conflict', path: 'startedAt', given: startedAt, allowed: `one clock at a time: the one started ${running} is stopped first`, params: { reason: 'clockRuns', started: running } }];
}
