import type { ShopCardDraft } from '#workshop';
import { bookOf } from '#workshop';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { SHOP } from './bench-store.ts';
import { type TestBook, engines } from './testing/engines.ts';
import { failureOf } from './testing/failure.ts';

const job = (key: number) => ({ cycle: 1, key, remedy: 'addLead', stage: 4 });

describe.each(engines)('work at the bench, $name', ({ open }) => {
  let book: TestBook;
  let pianoId = '';
  let jobs: readonly string[] = [];
  beforeAll(async () => {
    book = await open();
    pianoId = (await book.store().addPiano(SHOP, { name: 'Grand', kind: 'grand' }, 'p1')).id;
    jobs = (await book.store().addWork(pianoId, [job(1), job(2), job(3)], 'p1')).map(({ id }) => id);
  });
  afterAll(() => book.remove());
  const store = () => book.store();
  const add = (draft: ShopCardDraft) => store().addShopCard(SHOP, draft, 'p1');
  const clock = (startedAt: string, more: object = {}): ShopCardDraft => ({ kind: 'hours', pianoId, cycle: 1, on: startedAt.slice(0, 10), jobs: [...jobs], startedAt, ...more });
  const cards = async () => (await store().listShopCards()).cards;

  it('moves several jobs as one event, which undo takes back whole', async () => {
    const moved = await store().changeJobs(pianoId, jobs, { inHand: true, waits: { for: 'glue', until: '2031-05-01T08:00:00Z' } }, 'p1');
    expect(moved.map(({ inHand, waits }) => [inHand, waits?.for])).toEqual([[true, 'glue'], [true, 'glue'], [true, 'glue']]);
    const [last] = await store().listEvents(pianoId, { limit: 1 });
    expect(last?.changes).toHaveLength(3);
    await store().undo(pianoId, last?.seq ?? 0, 'p1');
    expect((await store().getPiano(pianoId)).work.map(({ inHand, waits }) => [inHand, waits])).toEqual([[false, null], [false, null], [false, null]]);
  });

  it('changes none of several where one is not there', async () => {
    expect(await failureOf(store().changeJobs(pianoId, [...jobs, 'nowhere'], { status: 'done' }, 'p1'))).toMatchObject({ reason: 'notFound' });
    expect((await store().getPiano(pianoId)).work.every(({ status }) => status === 'open')).toBe(true);
  });

  it('waits for no order that is not in the book', async () => {
    const failure = await failureOf(store().changeJobs(pianoId, jobs, { waits: { for: 'parts', purchase: 'nowhere' } }, 'p1'));
    expect(failure.issues).toMatchObject([{ code: 'unknown', path: 'waits.purchase', given: 'nowhere' }]);
  });

  it('shows pianos with jobs to do or done of late, and no others', async () => {
    const other = await store().addPiano(SHOP, { name: 'Idle', kind: 'grand' }, 'p1');
    const shown = async () => (await store().getBench()).pianos.map(({ instrument, work }) => [instrument.name, work.map(({ status }) => status).join(' ')]);
    expect(await shown()).toEqual([['Grand', 'open open open']]);
    await store().changeJobs(pianoId, jobs.slice(0, 1), { status: 'done' }, 'p1');
    await store().changeJobs(pianoId, jobs.slice(1, 2), { status: 'dropped' }, 'p1');
    expect(await shown()).toEqual([['Grand', 'done open']]);
    await store().addWork(other.id, [job(1)], 'p1');
    await store().openCycle(other.id, 'p1');
    expect(await shown()).toEqual([['Grand', 'done open']]);
  });

  it('runs one clock at a time for each person; start and stop are events that undo takes back', async () => {
    const first = await add(clock('2031-05-01T08:00:00Z'));
    const failure = await failureOf(add(clock('2031-05-01T09:00:00Z')));
    expect(failure.issues).toMatchObject([{ code: 'conflict', path: 'startedAt', params: { reason: 'clockRuns', started: '2031-05-01T08:00:00Z' } }]);
    await add(clock('2031-05-01T09:00:00Z', { who: 'ada' }));
    await store().changeShopCard(first.id, { kind: 'hours', stoppedAt: '2031-05-01T10:00:00Z' }, 'p1');
    const second = await add(clock('2031-05-01T10:00:00Z'));
    const [started] = await store().listEvents(bookOf(SHOP), { limit: 1 });
    await store().undo(bookOf(SHOP), started?.seq ?? 0, 'p1');
    expect((await cards()).map(({ id }) => id)).not.toContain(second.id);
    expect((await cards()).find(({ id }) => id === first.id)).toMatchObject({ stoppedAt: '2031-05-01T10:00:00Z', hours: null });
  });

  it('refuses a stop before the start, hours of nought or less, neither hours nor clock, and jobs of another piano', async () => {
    const refusal = async (draft: ShopCardDraft) => (await failureOf(add(draft))).issues.map(({ code, path }) => `${code} ${path}`);
    expect(await refusal(clock('2031-05-01T08:00:00Z', { stoppedAt: '2031-05-01T07:59:59Z' }))).toEqual(['order stoppedAt']);
    expect(await refusal(clock('2031-05-01T08:00:00Z', { hours: -1 }))).toEqual(['range hours']);
    expect(await refusal({ kind: 'hours', pianoId, cycle: 1, on: '2031-05-01' })).toEqual(['required hours']);
    expect(await refusal({ kind: 'hours', pianoId, cycle: 1, on: '2031-05-01', hours: 1, jobs: ['nowhere'] })).toEqual(['unknown jobs[0]']);
  });

  it('receives an order as one event, puts its lines into stock, and undoes both together', async () => {
    const wire = await add({ kind: 'stock', what: 'wire', name: 'Wire', unit: 'm' });
    const order = await add({ kind: 'purchase', orderedOn: '2031-05-02', status: 'ordered', currency: 'EUR', lines: [{ stock: wire.id, name: 'Wire', amount: 50, unit: 'm', priceMinor: 4990 }, { name: 'Postage', amount: 1, unit: 'piece' }] });
    const early = await failureOf(store().receivePurchase(order.id, { on: '2031-05-01' }, 'p1'));
    expect(early.issues).toMatchObject([{ code: 'order', path: 'on' }]);
    const before = (await store().listEvents(bookOf(SHOP), { limit: 1000 })).length;
    expect(await store().receivePurchase(order.id, { on: '2031-05-09' }, 'p1')).toMatchObject({ status: 'received', receivedOn: '2031-05-09' });
    const events = await store().listEvents(bookOf(SHOP), { limit: 1000 });
    expect([events.length - before, events[0]?.kind]).toEqual([1, 'purchase.received']);
    const moves = async () => (await cards()).filter((card) => card.kind === 'stockMove' && card.stock === wire.id);
    expect(await moves()).toMatchObject([{ amount: 50, purchase: order.id, details: { words: '' } }]);
    expect((await failureOf(store().receivePurchase(order.id, { on: '2031-05-09' }, 'p1'))).issues).toMatchObject([{ code: 'conflict', path: 'status', given: 'received' }]);
    await store().undo(bookOf(SHOP), events[0]?.seq ?? 0, 'p1');
    expect(await moves()).toEqual([]);
    expect((await cards()).find(({ id }) => id === order.id)).toMatchObject({ status: 'ordered', receivedOn: null });
    expect(await store().audit(bookOf(SHOP))).toMatchObject({ whole: true });
  });

  it('takes out of stock no more than its own moves leave, other stock beside it', async () => {
    const [felt, leather] = [await add({ kind: 'stock', what: 'felt', name: 'Felt', unit: 'm' }), await add({ kind: 'stock', what: 'leather', name: 'Leather', unit: 'm' })];
    const move = (stock: string, amount: number): ShopCardDraft => ({ kind: 'stockMove', stock, on: '2031-05-01', amount, reason: 'used' });
    await add(move(felt.id, 0.1));
    await add(move(felt.id, 0.2));
    await add(move(leather.id, 9));
    expect((await failureOf(add(move(felt.id, -0.31)))).issues).toMatchObject([{ path: 'amount', params: { there: 0.3 } }]);
    await add(move(felt.id, -0.3));
  });
});
