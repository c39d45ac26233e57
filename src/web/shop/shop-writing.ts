import type { ShopCard, ShopCardChange, ShopCardDraft } from '#workshop';
import { call } from '../api/client.ts';
import { queryClient } from '../api/queries.ts';
import { noteWritten } from '../undo/undo.ts';
import { SHOP_KEY, chainOfCard } from './shop-queries.ts';

/** Keeps a new card of the shop; it can be undone like any step. */
export async function addCard(draft: ShopCardDraft): Promise<ShopCard> {
  return await written(await call('addShopCard', { body: draft }));
}

/** Changes a card; only the fields that are to be another are sent. */
export async function changeCard(id: string, change: ShopCardChange): Promise<ShopCard> {
  return await written(await call('changeShopCard', { params: { cid: id }, body: change }));
}

/** Notes that an order has come, and puts its lines into stock, as one step. */
export async function receivePurchase(id: string, on: string): Promise<ShopCard> {
  return await written(await call('receivePurchase', { params: { cid: id }, body: { on } }));
}

/** Withdraws a card; undo brings it back. */
export async function withdrawCard(id: string): Promise<ShopCard> {
  return await written(await call('withdrawShopCard', { params: { cid: id } }));
}

/** Forgets a person for good. */
export async function forgetPerson(id: string): Promise<void> {
  await call('erasePerson', { params: { cid: id } });
  await queryClient.invalidateQueries({ queryKey: SHOP_KEY });
}

async function written(card: ShopCard): Promise<ShopCard> {
  await noteWritten(chainOfCard(card), card.id);
  await queryClient.invalidateQueries({ queryKey: SHOP_KEY });
  return card;
}
