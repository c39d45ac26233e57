import type { Issue } from '#result';
import { type CardOf, type Change, type ShopCard, orderIssues, shopCardDraftSchema } from '#workshop';
import { z } from 'zod';
import { cardThere, fieldChange } from '../cards/card.ts';
import { fitting } from '../check.ts';
import type { Bench } from '../database.ts';
import { carryOut } from '../write.ts';
import { lockBook } from './book.ts';
import { type Body, REFUSED, keepPersonal, refused } from './cards.ts';
import { shopCardThere, workshopOfCard } from './list.ts';

type Purchase = CardOf<'purchase'>;
const receiptSchema = z.strictObject({ on: z.iso.date() });

/** Notes that an order has come, and puts its lines of things kept in stock into stock: one event, undone as one. */
export async function receivePurchase(bench: Bench, cardId: string, receipt: { readonly on: string }, by: string): Promise<ShopCard> {
  const { on } = fitting(receiptSchema, receipt, REFUSED);
  return await bench.db.transaction(async (tx) => {
    const chain = await lockBook(tx, await workshopOfCard(tx, cardId));
    const shown = await shopCardThere(tx, cardId);
    const issues = shown.kind === 'purchase' ? openIssues(shown, on) : [notOpen(shown.kind)];
    if (shown.kind !== 'purchase' || issues.length > 0) throw refused(...issues);
    const at = bench.clock();
    const came = fieldChange('shop', cardId, await cardThere<Body>(tx, chain, 'shop', cardId), { status: 'received', receivedOn: on });
    const changes: Change[] = came === undefined ? [] : [came];
    for (const { stock, amount } of shown.lines) {
      if (stock === null) continue;
      const [id, { details, ...move }] = [bench.newId(), shopCardDraftSchema.parse({ kind: 'stockMove', stock, on, amount, reason: 'bought', purchase: cardId, pianoId: shown.pianoId })];
      changes.push({ entity: 'shop', place: id, before: null, after: { ...move, id, at: at.toISOString(), details: await keepPersonal(bench, tx, chain, id, details) } });
    }
    return await carryOut({ tx, chain, at }, by, { kind: 'purchase.received', changes, rests: shown.lines.flatMap(({ stock }) => (stock === null ? [] : [`shop/${stock}`])), answer: () => shopCardThere(tx, cardId) });
  });
}

/** Only what is open can come, and not before it was ordered. */
function openIssues(purchase: Purchase, receivedOn: string): readonly Issue[] {
  if (purchase.status === 'received' || purchase.status === 'cancelled') return [notOpen(purchase.status)];
  const { id: _id, workshopId: _workshop, at: _at, changedAt: _changed, sequence: _sequence, details: _details, ...draft } = purchase;
  return orderIssues(shopCardDraftSchema.parse({ ...draft, receivedOn })).map((issue) => ({ ...issue, path: issue.path === 'receivedOn' ? 'on' : issue.path }));
}

function notOpen(given: string): Issue {
  return { code: 'conflict', path: 'status', given, allowed: 'an order that has not come and was not called off', params: { reason: 'notOpen' } };
}
