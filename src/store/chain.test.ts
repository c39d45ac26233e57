import { createHash } from 'node:crypto';
import type { Instrument } from '#instrument';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { DEMO, SHOP } from './index.ts';
import { type TestBook, engines } from './testing/engines.ts';

const UNLOCK = 'alter table event disable trigger all';
const LOCK = 'alter table event enable trigger all';

describe.each(engines)('the log ($name)', ({ open }) => {
  let book: TestBook;
  let piano: Instrument;
  beforeAll(async () => void (book = await open()));
  afterAll(() => book.remove());
  beforeEach(async () => {
    piano = await book.store().addPiano(SHOP, { name: 'Grand', kind: 'grand' }, 'p1');
    for (const typed of ['50', '51', '52']) await book.store().writeReadings(piano.id, { cycle: 1, state: 'found', entries: [{ quantity: 'downWeightG', scope: 'key', index: 1, typed }] }, 'p1');
  });
  const mine = () => `instrument = '${piano.id}'`;
  const tampered = async (...statements: readonly string[]) => {
    await book.behindItsBack(UNLOCK, ...statements, LOCK);
    return await book.store().audit(piano.id);
  };

  it('is whole as written, and lists events newest first, page by page', async () => {
    expect(await book.store().audit(piano.id)).toMatchObject({ whole: true, events: 4, firstBrokenSeq: null });
    expect((await book.store().listEvents(piano.id)).map(({ seq }) => seq)).toEqual([4, 3, 2, 1]);
    expect((await book.store().listEvents(piano.id, { before: 4, limit: 2 })).map(({ seq }) => seq)).toEqual([3, 2]);
    const [last] = await book.store().listEvents(piano.id);
    expect((await book.store().getPiano(piano.id)).head).toEqual({ seq: 4, hash: last?.hash });
  });

  it('hashes to what the database makes of the stored texts by itself, each naming the one before', async () => {
    const rows = await book.rows<{ same: boolean; linked: boolean }>(`
      select hash = encode(sha256(convert_to(text, 'UTF8')), 'hex') as same,
        text::jsonb->>'prev' = coalesce(lag(hash) over (order by seq), '') as linked
      from event where ${mine()}`);
    expect(rows).toEqual(Array.from({ length: 4 }, () => ({ same: true, linked: true })));
  });

  it.each([
    ['a figure changed in a text', `update event set text = replace(text, '"51"', '"49"') where seq = 3 and `, 3],
    ['white space added to a text', `update event set text = replace(text, '"by":', '"by": ') where seq = 2 and `, 2],
    ['an event taken out', 'delete from event where seq = 2 and ', 2],
    ['the last event taken out', 'delete from event where seq = 4 and ', 4],
    ['an event said to undo another', 'update event set undoes = 2 where seq = 3 and ', 3],
  ])('finds %s', async (_, statement, firstBrokenSeq) => {
    expect(await tampered(statement + mine())).toMatchObject({ whole: false, firstBrokenSeq });
  });

  it('finds a text changed together with its hash, by the link of the next', async () => {
    const [event] = await book.store().listEvents(piano.id, { before: 4, limit: 1 });
    const hash = createHash('sha256').update('{}').digest('hex');
    expect(event?.hash).not.toBe(hash);
    expect((await tampered(`update event set text = '{}', hash = '${hash}' where seq = 3 and ${mine()}`)).firstBrokenSeq).toBe(3);
  });

  it('finds two events exchanged, hashes and all', async () => {
    expect(await tampered(`update event set seq = -seq where seq in (2, 3) and ${mine()}`, `update event set seq = 5 + seq where seq < 0 and ${mine()}`)).toMatchObject({ whole: false, firstBrokenSeq: 2 });
  });

  it('finds a head put back', async () => {
    const [, before] = await book.store().listEvents(piano.id);
    expect(await tampered(`update chain_head set seq = 3, hash = '${before?.hash ?? ''}' where ${mine()}`)).toMatchObject({ whole: true, events: 3 });
    expect(await tampered(`update chain_head set seq = 4 where ${mine()}`)).toMatchObject({ whole: false, firstBrokenSeq: 4 });
  });

  it.each([
    ['an event rewritten', 'update event set text = \'{}\' where ', 'events are never changed'],
    ['an event deleted', 'delete from event where ', 'events are never deleted'],
    ['a reading rewritten', 'update reading set value = 1 where ', 'readings are never overwritten'],
    ['a reading deleted', 'delete from reading where ', 'readings are never deleted'],
    ['the log emptied', 'truncate event -- ', 'never emptied'],
    ['the readings emptied', 'truncate reading -- ', 'never emptied'],
  ])('has the database itself refuse %s', async (_, statement, message) => {
    await expect(book.behindItsBack(statement + mine())).rejects.toThrow(message);
    expect(await book.store().audit(piano.id)).toMatchObject({ whole: true, events: 4 });
  });

  it('lets the demo go, and no other workshop', async () => {
    const demo = await book.store().addPiano(DEMO, { name: 'Demo', kind: 'grand' }, 'p1');
    await book.behindItsBack(`delete from event where instrument = '${demo.id}'`);
    expect((await book.store().audit(demo.id)).whole).toBe(false);
  });
});
