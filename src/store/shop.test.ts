import { createSay, explainIssue } from '#text';
import type { ShopCard, ShopCardDraft } from '#workshop';
import { bookOf, usualPlan } from '#workshop';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { DEMO, SHOP, type StoreFailure } from './bench-store.ts';
import { failureOf } from './testing/failure.ts';
import { type TestBook, engines } from './testing/engines.ts';

const grand = { name: 'Grand', kind: 'grand' } as const;
const contact = (name: string): ShopCardDraft => ({ kind: 'contact', roles: ['customer'], details: { name, phone: '+00 123' } });

describe.each(engines)('the book of the shop, $name', ({ open }) => {
  let book: TestBook;
  beforeAll(async () => {
    book = await open();
  });
  afterAll(() => book.remove());
  const store = () => book.store();
  const add = (draft: ShopCardDraft): Promise<ShopCard> => store().addShopCard(SHOP, draft, 'p1');
  const refusal = async (attempt: Promise<unknown>): Promise<StoreFailure> => await failureOf(attempt);

  it('is a chain of its own, whole after every kind of write, and holds no name', async () => {
    const { id } = await add(contact('Nameworthy Person'));
    await store().changeShopCard(id, { kind: 'contact', details: { name: 'Nameworthy Other', organisation: '', phone: '', email: '', address: '', remark: '' } }, 'p1');
    const visit = await add({ kind: 'appointment', person: id, purpose: 'tuning', where: 'home', startsAt: '2031-05-01T08:00:00Z', minutes: 60, details: { place: 'Nameworthy House', words: '' } });
    await store().withdrawShopCard(visit.id, 'p1');
    const events = await store().listEvents(bookOf(SHOP));
    expect(events.map(({ kind }) => kind)).toEqual(['shop.withdrawn', 'shop.added', 'shop.changed', 'shop.added']);
    expect(JSON.stringify(events)).not.toContain('Nameworthy');
    expect(await store().audit(bookOf(SHOP))).toMatchObject({ whole: true, events: 4 });
    expect(await store().listPianos()).toEqual([]);
  });

  it('undoes a change of what is personal, back to the words before', async () => {
    const { id } = await add(contact('Before'));
    await store().changeShopCard(id, { kind: 'contact', details: { name: 'After', organisation: '', phone: '', email: '', address: '', remark: '' } }, 'p1');
    const nameNow = async (): Promise<unknown> => (await store().listShopCards()).cards.find((card) => card.id === id)?.details;
    expect(await nameNow()).toMatchObject({ name: 'After' });
    const [last] = await store().listEvents(bookOf(SHOP), { limit: 1 });
    await store().undo(bookOf(SHOP), last?.seq ?? 0, 'p1');
    expect(await nameNow()).toMatchObject({ name: 'Before', phone: '+00 123' });
  });

  it('forgets nobody with something open, and names each thing; then forgets all that is personal, and no chain breaks', async () => {
    const piano = await store().addPiano(SHOP, grand, 'p1');
    const { id } = await add(contact('Zebulon'));
    await add({ kind: 'ownership', person: id, pianoId: piano.id, relation: 'owns', from: '1999', details: { words: 'Zebulon inherited it' } });
    const asked = await add({ kind: 'enquiry', person: id, on: '2031-01-02', about: 'restoration' });
    const visit = await add({ kind: 'appointment', person: id, purpose: 'viewing', where: 'hall', startsAt: '2031-05-01T08:00:00Z', minutes: 60 });
    const [job] = await store().addWork(piano.id, [{ cycle: 1, key: null, remedy: 'other', remark: 'Ease it', stage: 5 }], 'p1');
    const loan = await add({ kind: 'loan', person: id, pianoId: piano.id, from: '2031-02-01' });
    const move = await store().addCare(piano.id, { kind: 'move', on: '2031-03-01' }, 'p1');
    const failure = await refusal(store().erasePerson(id, 'p1'));
    expect(failure.reason).toBe('refused');
    expect(failure.issues.map(({ params }) => params?.['reason']).sort()).toEqual(['open.appointment', 'open.enquiry', 'open.jobs', 'open.loan', 'open.move']);
    await store().changeShopCard(asked.id, { kind: 'enquiry', status: 'won' }, 'p1');
    await store().changeShopCard(visit.id, { kind: 'appointment', status: 'cancelled' }, 'p1');
    await store().changeShopCard(loan.id, { kind: 'loan', returnedOn: '2031-02-09' }, 'p1');
    await store().changeCare(piano.id, move.id, { kind: 'move', status: 'done' }, 'p1');
    await store().addCare(piano.id, { ...usualPlan, remark: 'Zither in the same room' }, 'p1');
    await store().changeWork(piano.id, job?.id ?? '', { status: 'done' }, 'p1');
    const given = await store().exportPerson(id);
    expect(given.contact.details).toMatchObject({ name: 'Zebulon' });
    expect(given.cards).toHaveLength(4);
    expect(given.care).toMatchObject([{ pianoId: piano.id, piano: 'Grand', card: { kind: 'move', on: '2031-03-01' } }, { card: { kind: 'plan', remark: 'Zither in the same room' } }]);
    expect(JSON.stringify(given.personal)).toContain('Zebulon inherited it');
    expect(given.events.length).toBeGreaterThanOrEqual(8);
    expect((await store().erasePerson(id, 'p1')).details).toBeNull();
    const left = [await book.rows('select * from personal'), await book.rows('select * from card'), await book.rows('select * from event'), await book.rows('select * from send')];
    expect(JSON.stringify(left)).not.toContain('Zebulon');
    expect(await store().audit(bookOf(SHOP))).toMatchObject({ whole: true });
    const { cards } = await store().listShopCards();
    expect(cards.filter((card) => 'person' in card && card.person === id)).toHaveLength(4);
    const [erasure] = await store().listEvents(bookOf(SHOP), { limit: 1 });
    expect((await refusal(store().undo(bookOf(SHOP), erasure?.seq ?? 0, 'p1'))).reason).toBe('notUndoable');
    expect((await refusal(add({ kind: 'enquiry', person: id, on: '2031-01-02', about: 'other' }))).issues).toMatchObject([{ path: 'person', params: { reason: 'erased' } }]);
    expect((await refusal(store().erasePerson(id, 'p1'))).reason).toBe('notFound');
  });

  it('does not forget who is to carry a piano: each planned move is named, handed out, and nobody forgotten is written into one', async () => {
    const piano = await store().addPiano(SHOP, { ...grand, name: 'Carried grand' }, 'p1');
    const { id } = await store().addShopCard(SHOP, { kind: 'contact', roles: ['mover'], details: { name: 'Carrier' } }, 'p1');
    const { id: other } = await add(contact('Second carrier'));
    const move = await store().addCare(piano.id, { kind: 'move', on: '2031-03-02', mover: id }, 'p1');
    const refused = async () => (await refusal(store().erasePerson(id, 'p1'))).issues.map((issue) => explainIssue(createSay('en'), issue, 'en'));
    expect(await refused()).toEqual(['A move is still planned: 2031-03-02, Carried grand.']);
    const given = await store().exportPerson(id);
    expect(given.care).toMatchObject([{ pianoId: piano.id, piano: 'Carried grand', card: { id: move.id, mover: id } }]);
    expect(given.events.map(({ kind }) => kind)).toEqual(['shop.added', 'care.added']);
    expect((await store().exportPerson(other)).care).toEqual([]);
    await store().changeCare(piano.id, move.id, { kind: 'move', status: 'cancelled' }, 'p1');
    expect((await store().erasePerson(id, 'p1')).details).toBeNull();
    const mover = async (attempt: Promise<unknown>): Promise<unknown> => (await refusal(attempt)).issues.map(({ path, code }) => `${path} ${code}`);
    expect(await mover(store().addCare(piano.id, { kind: 'move', on: '2031-03-03', mover: id }, 'p1'))).toEqual(['mover conflict']);
    expect(await mover(store().addCare(piano.id, { kind: 'move', on: '2031-03-03', mover: 'somebody' }, 'p1'))).toEqual(['mover unknown']);
    expect(await store().changeCare(piano.id, move.id, { kind: 'move', remark: 'Called off by telephone' }, 'p1')).toMatchObject({ mover: id, remark: 'Called off by telephone' });
    expect(await store().changeCare(piano.id, move.id, { kind: 'move', mover: other, status: 'planned' }, 'p1')).toMatchObject({ mover: other });
    expect(await mover(store().changeCare(piano.id, move.id, { kind: 'move', mover: id }, 'p1'))).toEqual(['mover conflict']);
  });

  it('refuses days in the wrong order, strangers, and a person and a piano of two workshops', async () => {
    const { id } = await add(contact('Ordered'));
    const demo = await store().addPiano(DEMO, grand, 'p1');
    const paths = async (draft: ShopCardDraft): Promise<unknown> => (await refusal(add(draft))).issues.map(({ path, code }) => `${path} ${code}`);
    expect(await paths({ kind: 'ownership', person: id, relation: 'owns', from: '1980', until: '1979-12' })).toEqual(['until order']);
    expect(await paths({ kind: 'ownership', person: id, relation: 'owns', from: '80' })).toEqual(['from format']);
    expect(await paths({ kind: 'reminder', purpose: 'tuning', firstOn: '2031-02-01', everyMonths: 6, until: '2031-01-31' })).toEqual(['until order']);
    expect(await paths({ kind: 'enquiry', person: 'nobody', on: '2031-01-02', about: 'other' })).toEqual(['person unknown']);
    expect(await paths({ kind: 'enquiry', person: id, pianoId: 'none', on: '2031-01-02', about: 'other' })).toEqual(['pianoId unknown']);
    expect(await paths({ kind: 'enquiry', person: id, pianoId: demo.id, on: '2031-01-02', about: 'other' })).toEqual(['pianoId conflict']);
    expect(await paths({ kind: 'appointment', purpose: 'other', where: 'shop', startsAt: '2031-02-01T10:00:00Z', minutes: -5 })).toEqual(['minutes range']);
    expect((await refusal(store().withdrawShopCard(id, 'p1'))).issues).toMatchObject([{ params: { reason: 'forgetInstead' } }]);
  });

  it('puts a card into the book of what it names, and takes the demonstration away whole', async () => {
    const demo = await store().addPiano(DEMO, grand, 'p1');
    const reminder = await add({ kind: 'reminder', pianoId: demo.id, purpose: 'tuning', firstOn: '2031-02-01' });
    expect(reminder.workshopId).toBe(DEMO);
    await store().removeDemo();
    expect((await store().listShopCards()).cards.some(({ workshopId }) => workshopId === DEMO)).toBe(false);
    expect(await book.rows("select 1 from personal where workshop = 'demo'")).toEqual([]);
  });

  it('is sent as far as it is asked for: by kind, by piano, by person, and what is still open', async () => {
    const [one, other] = [await store().addPiano(SHOP, grand, 'p1'), await store().addPiano(SHOP, grand, 'p1')];
    const { id } = await add(contact('Asked for'));
    const owns = await add({ kind: 'ownership', person: id, pianoId: one.id, relation: 'owns' });
    const elsewhere = await add({ kind: 'ownership', person: id, pianoId: other.id, relation: 'owns' });
    const wants = await add({ kind: 'ownership', person: id, relation: 'wants' });
    const loan = await add({ kind: 'loan', person: id, pianoId: one.id, from: '2031-02-01' });
    const ids = async (asked: Parameters<ReturnType<typeof store>['listShopCards']>[0]) => (await store().listShopCards(asked)).cards.map((card) => card.id);
    expect(await ids({ kinds: ['ownership'], person: id })).toEqual([owns.id, elsewhere.id, wants.id]);
    expect(await ids({ kinds: ['ownership'], person: id, pianoId: one.id })).toEqual([owns.id, wants.id]);
    expect(await ids({ person: id, isOpen: true })).toEqual([owns.id, elsewhere.id, wants.id, loan.id]);
    expect(await ids({ kinds: [] })).toEqual([]);
    await store().changeShopCard(loan.id, { kind: 'loan', returnedOn: '2031-02-09' }, 'p1');
    const visit = await add({ kind: 'appointment', person: id, purpose: 'viewing', where: 'hall', startsAt: '2031-05-01T08:00:00Z', minutes: 60 });
    expect(await ids({ kinds: ['loan', 'appointment'], person: id, isOpen: true })).toEqual([visit.id]);
    await store().changeShopCard(visit.id, { kind: 'appointment', status: 'done' }, 'p1');
    expect(await ids({ kinds: ['loan', 'appointment'], person: id, isOpen: true })).toEqual([]);
    expect(await ids({ kinds: ['loan', 'appointment'], person: id })).toEqual([loan.id, visit.id]);
  });

  it('counts each change of a card, undo included, and never back', async () => {
    const visit = await add({ kind: 'appointment', purpose: 'other', where: 'shop', startsAt: '2031-02-01T10:00:00Z', minutes: 30 });
    expect(visit.sequence).toBe(0);
    const moved = await store().changeShopCard(visit.id, { kind: 'appointment', startsAt: '2031-02-02T10:00:00Z' }, 'p1');
    const [last] = await store().listEvents(bookOf(SHOP), { limit: 1 });
    await store().undo(bookOf(SHOP), last?.seq ?? 0, 'p1');
    const back = (await store().listShopCards()).cards.find(({ id }) => id === visit.id);
    expect(back).toMatchObject({ startsAt: '2031-02-01T10:00:00Z' });
    expect([moved.sequence > 0, (back?.sequence ?? 0) > moved.sequence]).toEqual([true, true]);
    await store().withdrawShopCard(visit.id, 'p1');
    expect((await store().listShopCards()).withdrawn.find(({ id }) => id === visit.id)?.sequence).toBeGreaterThan(back?.sequence ?? 0);
  });
});
