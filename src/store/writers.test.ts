import type { ReadingEntry } from '#workshop';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { SHOP } from './index.ts';
import { type TestBook, engines } from './testing/engines.ts';
import { failureOf } from './testing/failure.ts';

const WRITERS = 12;
const EACH = 8;

describe.each(engines)('several writers at once ($name)', ({ open }) => {
  let book: TestBook;
  beforeAll(async () => void (book = await open()));
  afterAll(() => book.remove());

  const entry = (index: number, typed: string, rest: Partial<ReadingEntry> = {}): ReadingEntry => ({ quantity: 'downWeightG', scope: 'key', index, typed, ...rest });

  it('lose nothing at one instrument, and keep the chain whole and without gaps', async () => {
    const store = book.store();
    const piano = await store.addPiano(SHOP, { name: 'Busy', kind: 'grand' }, 'p1');
    const writer = async (at: number): Promise<readonly number[]> => {
      const seqs: number[] = [];
      for (let turn = 0; turn < EACH; turn += 1) {
        const { seq } = await store.writeReadings(piano.id, { cycle: 1, state: 'found', entries: [entry(1 + (turn % 4), String(40 + at)), entry(20 + at, String(40 + turn))] }, `writer${String(at)}`);
        seqs.push(seq);
      }
      return seqs;
    };
    const seqs = (await Promise.all(Array.from({ length: WRITERS }, (_, at) => writer(at)))).flat();
    expect(seqs.toSorted((a, b) => a - b)).toEqual(Array.from({ length: WRITERS * EACH }, (_, at) => at + 2));
    expect(await store.audit(piano.id)).toMatchObject({ whole: true, events: 1 + WRITERS * EACH });
    const [kept] = await book.rows<{ count: number }>(`select count(*)::int as count from reading where instrument = '${piano.id}'`);
    expect(kept?.count).toBe(2 * WRITERS * EACH);
    const standing = await store.listReadings(piano.id);
    expect(standing).toHaveLength(4 + WRITERS);
    for (let at = 0; at < WRITERS; at += 1) expect(standing.find(({ index }) => index === 20 + at)?.typed).toBe(String(40 + EACH - 1));
  });

  it('of two who saw the same, let one write and tell the other', async () => {
    const store = book.store();
    const piano = await store.addPiano(SHOP, { name: 'Contested', kind: 'grand' }, 'p1');
    const attempt = (typed: string) => store.writeReadings(piano.id, { cycle: 1, state: 'found', entries: [entry(40, typed, { basedOn: null })] }, 'p1');
    const outcomes = await Promise.allSettled(['50', '51', '52', '53'].map(attempt));
    expect(outcomes.filter(({ status }) => status === 'fulfilled')).toHaveLength(1);
    const won = outcomes.findIndex(({ status }) => status === 'fulfilled');
    expect(await store.listReadings(piano.id)).toMatchObject([{ typed: ['50', '51', '52', '53'][won] }]);
  });

  it('sending the same batch at the same time write it once', async () => {
    const store = book.store();
    const piano = await store.addPiano(SHOP, { name: 'Repeated', kind: 'grand' }, 'p1');
    const send = () => store.writeReadings(piano.id, { cycle: 1, state: 'found', sendId: 'send-0001', entries: [entry(40, '50')] }, 'p1');
    const answers = await Promise.all([send(), send(), send(), send()]);
    for (const answer of answers) expect(answer).toEqual(answers[0]);
    expect(await store.audit(piano.id)).toMatchObject({ whole: true, events: 2 });
  });

  it('undoing the same event at the same time undo it once', async () => {
    const store = book.store();
    const piano = await store.addPiano(SHOP, { name: 'Undone', kind: 'grand' }, 'p1');
    const { seq } = await store.writeReadings(piano.id, { cycle: 1, state: 'found', entries: [entry(40, '50')] }, 'p1');
    const outcomes = await Promise.allSettled([1, 2, 3].map(() => store.undo(piano.id, seq, 'p1')));
    expect(outcomes.filter(({ status }) => status === 'fulfilled')).toHaveLength(1);
    expect(await store.listReadings(piano.id)).toEqual([]);
  });

  it('at different instruments, with some of them refused midway, do not get into each other', async () => {
    const store = book.store();
    const pianos = await Promise.all(Array.from({ length: 6 }, (_, at) => store.addPiano(SHOP, { name: `Side ${String(at)}`, kind: 'grand' }, 'p1')));
    const turns = pianos.flatMap((piano, at) => Array.from({ length: 10 }, async (_, turn) => {
      const bad = turn % 3 === 1;
      const write = store.writeReadings(piano.id, { cycle: 1, state: 'found', entries: [entry(1 + turn, String(40 + at), bad ? { basedOn: 'none' } : {})] }, 'p1');
      if (bad) expect((await failureOf(write)).reason).toBe('conflict');
      else await write;
    }));
    await Promise.all(turns);
    for (const [at, piano] of pianos.entries()) {
      expect((await store.listReadings(piano.id)).map(({ index, typed }) => [index, typed])).toEqual([1, 3, 4, 6, 7, 9, 10].map((key) => [key, String(40 + at)]));
      expect(await store.audit(piano.id)).toMatchObject({ whole: true, events: 8 });
    }
  });

  it('removing the demo meanwhile either find it or do not', async () => {
    const store = book.store();
    const demo = await store.addPiano('demo', { name: 'Demo', kind: 'grand' }, 'p1');
    const writes = Array.from({ length: 6 }, (_, at) => store.writeReadings(demo.id, { cycle: 1, state: 'found', entries: [entry(1 + at, '50')] }, 'p1'));
    const [removed, ...outcomes] = await Promise.allSettled([store.removeDemo(), ...writes]);
    expect(removed).toMatchObject({ status: 'fulfilled', value: 1 });
    for (const outcome of outcomes) if (outcome.status === 'rejected') expect(outcome.reason).toMatchObject({ reason: 'notFound' });
    for (const table of ['event', 'reading', 'card', 'chain_head']) expect(await book.rows(`select * from ${table} where workshop = 'demo'`)).toEqual([]);
  });
});
