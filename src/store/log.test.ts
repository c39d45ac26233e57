import { eventDaysOf } from '#workshop';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { SHOP } from './index.ts';
import { type TestBook, engines } from './testing/engines.ts';

describe.each(engines)('the log of a piano that comes back ($name)', ({ open }) => {
  let book: TestBook;
  let id = '';
  let session = '';
  let job = '';
  beforeAll(async () => {
    book = await open();
    id = (await book.store().addPiano(SHOP, { name: 'Grand', kind: 'grand' }, 'p1')).id;
    session = (await book.store().addSession(id, { cycle: 1, state: 'found', stepG: 1 }, 'p1')).id;
    await write('50', session);
    await write('51', null);
    job = (await book.store().addWork(id, [{ cycle: 1, key: 1, remedy: 'addLead', stage: 4 }], 'p1'))[0]?.id ?? '';
    await book.store().openCycle(id, 'p1');
    await book.store().changeWork(id, job, { status: 'done' }, 'p1');
  });
  afterAll(() => book.remove());
  const store = () => book.store();
  const write = (typed: string, sessionId: string | null) => store().writeReadings(id, { cycle: 1, state: 'found', sessionId, entries: [{ quantity: 'downWeightG', scope: 'key', index: 1, typed }] }, 'p1');
  const seqs = async (asked: Parameters<ReturnType<typeof store>['listEvents']>[1]) => (await store().listEvents(id, asked)).map(({ seq }) => seq);
  const days = async () => eventDaysOf(await store().listEventMarks(id), 'UTC').map(({ cycle, first, last, what }) => [cycle, first, last, what]);

  it('is read by stretch, by kind of change, about one card, and by what is true of an event', async () => {
    expect(await seqs({})).toEqual([7, 6, 5, 4, 3, 2, 1]);
    expect(await seqs({ since: 3, before: 6 })).toEqual([5, 4, 3]);
    expect(await seqs({ what: 'reading' })).toEqual([4, 3]);
    expect(await seqs({ about: `session/${session}` })).toEqual([3, 2]);
    expect(await seqs({ about: `work/${job}` })).toEqual([7, 5]);
    expect(await seqs({ about: 'work/%' })).toEqual([]);
    expect(await seqs({ matches: ({ seq }) => seq % 2 === 1, limit: 2 })).toEqual([7, 5]);
    expect(await seqs({ matches: ({ seq }) => seq % 2 === 1, limit: 2, before: 5 })).toEqual([3, 1]);
  });

  it('tells its days by stay; a stay whose opening was undone never was', async () => {
    expect(await days()).toEqual([[2, 6, 7, { instrument: 1, work: 1 }], [1, 1, 5, { instrument: 1, session: 1, reading: 2, work: 1 }]]);
    const other = (await store().addPiano(SHOP, { name: 'Upright', kind: 'upright' }, 'p1')).id;
    await store().openCycle(other, 'p1');
    await store().undo(other, 2, 'p1');
    expect(eventDaysOf(await store().listEventMarks(other), 'UTC').map(({ cycle, last }) => [cycle, last])).toEqual([[1, 3]]);
  });

  it('is gone through beyond one lot where something is looked for far back', async () => {
    for (let count = 0; count < 201; count += 1) await write(String(50 + (count % 3)), null);
    expect(await seqs({ matches: ({ kind }) => kind === 'piano.added' })).toEqual([1]);
  });
});
