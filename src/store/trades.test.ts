import { type ShopCard, type ShopCardDraft, bookOf } from '#workshop';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { SHOP, type StoreFailure } from './bench-store.ts';
import { type TestBook, engines } from './testing/engines.ts';
import { failureOf } from './testing/failure.ts';

describe.each(engines)('pianos bought and sold, $name', ({ open }) => {
  let book: TestBook;
  beforeAll(async () => {
    book = await open();
  });
  afterAll(() => book.remove());
  const add = (draft: ShopCardDraft): Promise<ShopCard> => book.store().addShopCard(SHOP, draft, 'p1');
  const reasons = async (attempt: Promise<unknown>): Promise<readonly unknown[]> => {
    const failure: StoreFailure = await failureOf(attempt);
    return failure.issues.map(({ path, params }) => `${path} ${String(params?.['reason'])}`);
  };

  it('hold together: numbers once, sold once, not before it was bought, not withdrawn under its sale; and each step is undone', async () => {
    const { id: seller } = await add({ kind: 'contact', roles: ['customer'], details: { name: 'Tellable Seller' } });
    const purchase: ShopCardDraft = { kind: 'acquisition', number: 1, person: seller, on: '2031-03-01', priceMinor: 100, currency: 'EUR', details: { name: 'Tellable Seller', address: 'Tellable Lane' } };
    const { id } = await add(purchase);
    expect(await reasons(add({ ...purchase, priceMinor: 1, currency: null }))).toEqual(['currency currency', 'number stockNumber']);
    expect(await reasons(add({ kind: 'sale', acquisition: 'nowhere' }))).toEqual(['acquisition acquisition']);
    expect(await reasons(add({ kind: 'sale', acquisition: seller }))).toEqual(['acquisition acquisition']);
    expect(await reasons(add({ kind: 'sale', acquisition: id, on: '2031-02-28' }))).toEqual(['on dayBefore']);
    const sale = await add({ kind: 'sale', acquisition: id, on: '2031-04-01' });
    expect(await reasons(add({ kind: 'sale', acquisition: id, on: '2031-05-01' }))).toEqual(['acquisition soldAlready']);
    expect(await reasons(book.store().changeShopCard(id, { kind: 'acquisition', on: '2031-04-02' }, 'p1'))).toEqual(['on dayAfter']);
    expect(await reasons(book.store().withdrawShopCard(id, 'p1'))).toEqual(['kind hasSale']);
    expect(await reasons(book.store().erasePerson(seller, 'p1'))).toEqual([' open.stockBook']);
    await book.store().changeShopCard(sale.id, { kind: 'sale', priceMinor: 250, currency: 'EUR' }, 'p1');
    const events = await book.store().listEvents(bookOf(SHOP));
    expect(JSON.stringify(events)).not.toContain('Tellable');
    for (const { seq } of events.slice(0, 2)) await book.store().undo(bookOf(SHOP), seq, 'p1');
    expect((await book.store().listShopCards()).cards.map(({ kind }) => kind)).toEqual(['contact', 'acquisition']);
    expect(await book.store().audit(bookOf(SHOP))).toMatchObject({ whole: true });
    await book.store().changeShopCard(id, { kind: 'acquisition', person: null, details: { name: '', address: '', words: '' } }, 'p1');
    await book.store().erasePerson(seller, 'p1');
    expect((await book.store().listShopCards()).cards.find((card) => card.id === id)).toMatchObject({ details: { name: '' }, priceMinor: 100 });
  });
});
