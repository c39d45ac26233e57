import { createSay, explainIssue } from '#text';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { DEMO, SHOP } from './index.ts';
import { type TestBook, engines } from './testing/engines.ts';
import { failureOf } from './testing/failure.ts';

const grand = { name: 'Grand to be reckoned', kind: 'grand' } as const;
const estimate = {
  currency: 'EUR', rateMinor: 6000, contingency: { kind: 'none' }, pricing: { kind: 'markup', pct: 10 }, tax: { regime: 'ordinary', ratePct: 19 },
  alternatives: [{ id: 'full', words: 'Full' }], lines: [{ kind: 'labour', id: 'a', words: 'String it', low: 10, likely: 10, high: 10, ways: ['full'] }, { kind: 'part', id: 'b', words: 'Wire', priceMinor: 12_345, ways: ['full'] }],
} as const;
const plain = () => structuredClone(estimate) as never;
const draft = { cycle: 1, alternative: 'full', validUntil: '2026-03-31' };

describe.each(engines)('estimates and quotes ($name)', ({ open }) => {
  let book: TestBook;
  beforeAll(async () => void (book = await open()));
  afterAll(() => book.remove());
  const store = () => book.store();
  const pianoWith = async (workshop = SHOP) => {
    const { id } = await store().addPiano(workshop, grand, 'p1');
    await store().setEstimate(id, 1, plain(), 'p1');
    return id;
  };

  it('keep an estimate whole, once, and take it back', async () => {
    const id = await pianoWith();
    await store().setEstimate(id, 1, plain(), 'p1');
    expect((await store().getPiano(id)).estimates[1]).toMatchObject({ currency: 'EUR', rounding: 'half-up', owner: 'customer' });
    expect(await store().listEvents(id)).toHaveLength(2);
    await store().undo(id, 2, 'p1');
    expect((await store().getPiano(id)).estimates).toEqual({});
  });

  it('are not left without the person they are for: an open quote is named before anybody is forgotten', async () => {
    const id = await pianoWith();
    const { id: person } = await store().addShopCard(SHOP, { kind: 'contact', roles: ['customer'], details: { name: 'Quoted person' } }, 'p1');
    const quote = await store().addQuote(id, { ...draft, customer: 'typed by hand' }, 'p1');
    await store().changeQuote(id, quote.id, { customer: person }, 'p1');
    const refused = async () => (await failureOf(store().erasePerson(person, 'p1'))).issues.map((issue) => explainIssue(createSay('en'), issue, 'en'));
    expect(await refused()).toEqual(['A quote is not answered: Full (1).']);
    await store().sendQuote(id, quote.id, { on: '2026-03-01' }, 'p1');
    expect(await refused()).toEqual(['A quote is not answered: Full (1).']);
    await store().answerQuote(id, quote.id, { answer: 'declined', on: '2026-03-02' }, 'p1');
    expect((await store().erasePerson(person, 'p1')).details).toBeNull();
    const [, changed] = (await store().listEvents(id)).toReversed().filter(({ kind }) => kind === 'quote.added' || kind === 'quote.changed');
    expect(changed?.changes).toMatchObject([{ before: { customer: 'typed by hand' }, after: { customer: person } }]);
  });

  it('refuse bad money, hours and dates by their cell, and keep nothing of it', async () => {
    const { id } = await store().addPiano(SHOP, grand, 'p1');
    const refused = async (change: object) => (await failureOf(store().setEstimate(id, 1, { ...estimate, ...change } as never, 'p1'))).issues.map(({ code, path }) => `${code} ${path}`);
    expect(await refused({ rateMinor: 60.5 })).toEqual(['type rateMinor']);
    expect(await refused({ currency: 'ABC' })).toEqual(['choice currency']);
    expect(await refused({ purchasedOn: '2026-02-30' })).toEqual(['format purchasedOn']);
    expect(await refused({ lines: [{ ...estimate.lines[0], low: -1 }] })).toEqual(['range lines[0].low']);
    expect(await refused({ lines: [{ ...estimate.lines[0], high: 9 }] })).toEqual(['order lines[0].high']);
    expect(await failureOf(store().setEstimate(id, 2, plain(), 'p1'))).toMatchObject({ issues: [{ path: 'cycle' }] });
    expect(await failureOf(store().addQuote(id, draft, 'p1'))).toMatchObject({ issues: [{ code: 'required', path: 'cycle' }] });
    expect((await store().listEvents(id)).length).toBe(1);
  });

  it('draw up a quote as a copy that a later estimate does not reach once it is sent', async () => {
    const id = await pianoWith();
    const quote = await store().addQuote(id, draft, 'p1');
    expect(quote).toMatchObject({ version: 1, state: 'draft', title: 'Full', lines: [{ id: 'a', amountMinor: 66_000 }, { id: 'b', amountMinor: 13_580 }] });
    await store().setEstimate(id, 1, { ...(plain() as object), rateMinor: 7000 } as never, 'p1');
    expect(await store().changeQuote(id, quote.id, { remark: 'Hello' }, 'p1')).toMatchObject({ remark: 'Hello', lines: [{ amountMinor: 77_000 }, {}] });
    expect(await failureOf(store().sendQuote(id, quote.id, { on: '2026-04-01' }, 'p1'))).toMatchObject({ issues: [{ code: 'order', path: 'validUntil' }] });
    await store().sendQuote(id, quote.id, { on: '2026-03-01' }, 'p1');
    await store().setEstimate(id, 1, { ...(plain() as object), rateMinor: 9000 } as never, 'p1');
    expect(await failureOf(store().changeQuote(id, quote.id, { remark: 'No' }, 'p1'))).toMatchObject({ reason: 'refused', issues: [{ code: 'conflict', path: 'state', given: 'sent' }] });
    expect(await failureOf(store().withdrawQuote(id, quote.id, 'p1'))).toMatchObject({ issues: [{ path: 'state' }] });
    const [kept] = (await store().getPiano(id)).quotes;
    expect(kept).toMatchObject({ state: 'sent', sentOn: '2026-03-01', remark: 'Hello', lines: [{ amountMinor: 77_000 }, {}] });
    expect(await store().addQuote(id, { ...draft, replaces: quote.id }, 'p1')).toMatchObject({ version: 2, replaces: quote.id, lines: [{ amountMinor: 99_000 }, {}] });
  });

  it('let a draft be undone, and nothing of it once it was sent or answered', async () => {
    const id = await pianoWith();
    const quote = await store().addQuote(id, draft, 'p1');
    await store().undo(id, 3, 'p1');
    expect((await store().getPiano(id)).quotes).toEqual([]);
    await store().undo(id, 4, 'p1');
    await store().changeQuote(id, quote.id, { remark: 'A word' }, 'p1');
    await store().sendQuote(id, quote.id, { on: '2026-03-01' }, 'p1');
    expect(await failureOf(store().undo(id, 7, 'p1'))).toMatchObject({ reason: 'notUndoable', issues: [{ params: { reason: 'final' } }] });
    expect(await failureOf(store().undo(id, 6, 'p1'))).toMatchObject({ reason: 'notUndoable', issues: [{ params: { later: 7 } }] });
    await store().answerQuote(id, quote.id, { answer: 'accepted', on: '2026-03-05', lines: ['b'] }, 'p1');
    expect(await failureOf(store().undo(id, 8, 'p1'))).toMatchObject({ reason: 'notUndoable' });
    expect((await store().getPiano(id)).quotes).toMatchObject([{ state: 'accepted', answeredOn: '2026-03-05', acceptedLines: ['b'], remark: 'A word' }]);
    expect((await store().audit(id)).whole).toBe(true);
  });

  it('tell the estimates of the whole workshop, and not those of another', async () => {
    const [one, other, demo] = [await pianoWith(), await pianoWith(), await pianoWith(DEMO)];
    const told = (await store().listShopEstimates(one)).map(({ pianoId }) => pianoId);
    expect(told).toEqual(expect.arrayContaining([one, other]));
    expect(told).not.toContain(demo);
  });
});
