import { shippedRules } from '#law';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { SHOP } from './index.ts';
import { type TestBook, engines } from './testing/engines.ts';
import { failureOf } from './testing/failure.ts';

const material = { kind: 'material', material: 'ivory', where: 'Tops of 52 naturals', species: 'doubtful' } as const;

describe.each(engines)('papers ($name)', ({ open }) => {
  let book: TestBook;
  beforeAll(async () => void (book = await open()));
  afterAll(() => book.remove());
  const store = () => book.store();
  const newPiano = async () => (await store().addPiano(SHOP, { name: 'Piano with ivory', kind: 'grand' }, 'p1')).id;
  const issuesOf = async (work: Promise<unknown>) => (await failureOf(work)).issues.map(({ code, path }) => `${code} ${path}`);

  it('keeps, corrects and withdraws a material, and brings it back by undo', async () => {
    const id = await newPiano();
    const kept = await store().addPaper(id, material, 'p1');
    const changed = await store().changePaper(id, kept.id, { kind: 'material', species: 'proven', massG: 180.5, massUncertaintyG: 2, massHow: 'weighed' }, 'p2');
    expect(changed).toEqual({ ...kept, species: 'proven', massG: 180.5, massUncertaintyG: 2, massHow: 'weighed' });
    expect((await store().listEvents(id))[0]).toMatchObject({ kind: 'paper.changed', by: 'p2', changes: [{ before: { species: 'doubtful', massG: null } }] });
    await store().withdrawPaper(id, kept.id, 'p1');
    expect((await store().getPiano(id)).papers).toEqual([]);
    await store().undo(id, 4, 'p1');
    expect((await store().getPiano(id)).papers).toEqual([changed]);
    expect((await store().audit(id)).whole).toBe(true);
  });

  it('refuses by field a mass nobody told the making of, a photo not kept, another kind and a second history', async () => {
    const id = await newPiano();
    const { id: record } = await store().addPaper(id, material, 'p1');
    await store().addPaper(id, { kind: 'history', yearMade: 1926 }, 'p1');
    expect(await issuesOf(store().addPaper(id, { ...material, massG: 3 }, 'p1'))).toEqual(['required massHow']);
    expect(await issuesOf(store().addPaper(id, { ...material, massG: -3, massHow: 'weighed' }, 'p1'))).toEqual(['range massG']);
    expect(await issuesOf(store().addPaper(id, { ...material, photos: [{ hash: 'a'.repeat(64), name: 'x' }] }, 'p1'))).toEqual(['unknown photos[0].hash']);
    expect(await issuesOf(store().changePaper(id, record, { kind: 'history', yearMade: 1900 }, 'p1'))).toEqual(['choice kind']);
    expect(await issuesOf(store().addPaper(id, { kind: 'history' }, 'p1'))).toEqual(['conflict kind']);
  });

  it('takes in a newer file of rules, keeps the one before, and refuses an older one and one of the same day', async () => {
    const file = (issued: string) => ({ kind: 'ruleFile', file: { ...shippedRules, issued } }) as const;
    expect(await issuesOf(store().addShopCard(SHOP, file(shippedRules.issued), 'p1'))).toEqual(['order file.issued']);
    await store().addShopCard(SHOP, file('2031-01-01'), 'p1');
    expect(await issuesOf(store().addShopCard(SHOP, file('2031-01-01'), 'p1'))).toEqual(['order file.issued']);
    await store().addShopCard(SHOP, file('2031-06-01'), 'p1');
    expect((await store().listShopCards()).cards.flatMap((card) => (card.kind === 'ruleFile' ? [card.file.issued] : []))).toEqual(['2031-01-01', '2031-06-01']);
  });

  it('refuses a broken condition by its cell', async () => {
    const [first] = shippedRules.rules;
    if (first === undefined) throw new Error('no rules');
    const when = { all: [{ fact: 'yearMade', is: true }] } as const;
    expect(await issuesOf(store().addShopCard(SHOP, { kind: 'ruleFile', file: { ...shippedRules, issued: '2040-01-01', rules: [{ ...first, when: { all: [...when.all] } }] } }, 'p1'))).toEqual(['choice file.rules[0].when.all[0].fact']);
  });

  it('does not forget a person a shipment is planned with', async () => {
    const pianoId = await newPiano();
    const person = (await store().addShopCard(SHOP, { kind: 'contact', roles: ['customer'], details: { name: 'Buyer, invented' } }, 'p1')).id;
    const { id } = await store().addShopCard(SHOP, { kind: 'shipment', person, pianoId, on: '2031-02-03', action: 'ship-sold', from: 'DE', to: 'US' }, 'p1');
    expect(await failureOf(store().erasePerson(person, 'p1'))).toMatchObject({ issues: [{ code: 'conflict', params: { reason: 'open.shipment', on: '2031-02-03' } }] });
    await store().changeShopCard(id, { kind: 'shipment', status: 'cancelled' }, 'p1');
    await store().erasePerson(person, 'p1');
  });
});
