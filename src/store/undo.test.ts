import type { Instrument } from '#instrument';
import type { ReadingEntry } from '#workshop';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { SHOP } from './index.ts';
import { type TestBook, engines } from './testing/engines.ts';
import { failureOf } from './testing/failure.ts';

describe.each(engines)('undo ($name)', ({ open }) => {
  let book: TestBook;
  let piano: Instrument;
  beforeAll(async () => void (book = await open()));
  afterAll(() => book.remove());
  beforeEach(async () => void (piano = await book.store().addPiano(SHOP, { name: 'Grand', kind: 'grand' }, 'p1')));

  const write = async (...cells: readonly (readonly [number, string])[]) => {
    const entries = cells.map(([index, typed]): ReadingEntry => ({ quantity: 'downWeightG', scope: 'key', index, ...(typed === '' ? { clear: true } : { typed }) }));
    return (await book.store().writeReadings(piano.id, { cycle: 1, state: 'found', entries }, 'p1')).seq;
  };
  const undo = async (seq: number) => (await book.store().undo(piano.id, seq, 'p2')).seq;
  const standing = async () => Object.fromEntries((await book.store().listReadings(piano.id, 1)).map(({ index, typed }) => [index, typed]));

  it('takes a batch back whole, gives back what stood before, and can itself be undone, after a restart too', async () => {
    await write([1, '50']);
    const batch = await write([1, '51'], [2, '52'], [3, '53']);
    const undone = await undo(batch);
    expect(await standing()).toEqual({ 1: '50' });
    await book.reopen();
    expect(await standing()).toEqual({ 1: '50' });
    await undo(undone);
    expect(await standing()).toEqual({ 1: '51', 2: '52', 3: '53' });
    expect((await book.store().audit(piano.id)).whole).toBe(true);
  });

  it('withdraws, never deletes: history shows what was taken back', async () => {
    const batch = await write([1, '51']);
    await undo(batch);
    expect(await book.store().readingHistory(piano.id, { cycle: 1, state: 'found', quantity: 'downWeightG', index: 1 })).toMatchObject([{ typed: '51', standing: false, withdrawn: true }]);
    const [event, written] = await book.store().listEvents(piano.id);
    expect(event).toMatchObject({ kind: 'undone', by: 'p2', undoes: batch, undoneBy: null });
    expect(written).toMatchObject({ seq: batch, undoneBy: event?.seq });
  });

  it('refuses where a later event touched the same place, and names both', async () => {
    const first = await write([1, '50'], [2, '50']);
    const later = await write([2, '49']);
    expect(await failureOf(undo(first))).toMatchObject({
      reason: 'notUndoable',
      message: `Event ${String(first)} cannot be undone: event ${String(later)} came later and builds on c1/found/downWeightG/key/2/1.`,
      issues: [{ params: { seq: first, later, place: 'c1/found/downWeightG/key/2/1' } }],
    });
    expect(await standing()).toEqual({ 1: '50', 2: '49' });
    await undo(later);
    await undo(first);
    expect(await standing()).toEqual({});
  });

  it('undoes events that did not meet, in any order', async () => {
    const first = await write([1, '50']);
    await write([2, '50']);
    await undo(first);
    expect(await standing()).toEqual({ 2: '50' });
  });

  it('refuses a second undo of the same event', async () => {
    const first = await write([1, '50']);
    const undone = await undo(first);
    expect(await failureOf(undo(first))).toMatchObject({ reason: 'notUndoable', issues: [{ params: { seq: first, later: undone } }] });
  });

  it('gives back a reading that was cleared', async () => {
    await write([1, '50']);
    await undo(await write([1, '']));
    expect(await standing()).toEqual({ 1: '50' });
    expect(await book.store().readingHistory(piano.id, { cycle: 1, state: 'found', quantity: 'downWeightG', index: 1 })).toMatchObject([{ standing: true, withdrawn: false }]);
  });

  it('refuses a redo once another figure stands there', async () => {
    const undone = await undo(await write([1, '50']));
    const other = await write([1, '47']);
    expect((await failureOf(undo(undone))).issues).toMatchObject([{ params: { later: other } }]);
    expect(await standing()).toEqual({ 1: '47' });
  });

  it('takes back changes of cards field by field', async () => {
    await book.store().changePiano(piano.id, { name: 'Other name' }, 'p1');
    const session = await book.store().addSession(piano.id, { cycle: 1, state: 'found', stepG: 1 }, 'p1');
    await book.store().changePiano(piano.id, { maker: 'Unsigned' }, 'p1');
    await book.store().changeSession(piano.id, session.id, { stepG: 0.5 }, 'p1');
    await undo(2);
    await undo(5);
    expect(await book.store().getPiano(piano.id)).toMatchObject({ instrument: { name: 'Grand', maker: 'Unsigned' }, sessions: [{ stepG: 1 }] });
  });

  it('takes back intents, jobs and what was done to them', async () => {
    const intent = { even: 'downWeight', targetG: 49, toleranceG: 2, upWeightMinG: 20 } as const;
    await book.store().setIntent(piano.id, 1, intent, 'p1');
    const [job] = await book.store().addWork(piano.id, [{ cycle: 1, key: 1, remedy: 'other', stage: 5 }], 'p1');
    await book.store().changeWork(piano.id, job?.id ?? '', { status: 'done' }, 'p1');
    expect((await failureOf(undo(3))).issues).toMatchObject([{ params: { later: 4 } }]);
    const file = async () => await book.store().getPiano(piano.id);
    await undo(4);
    expect((await file()).work).toEqual([job]);
    await undo(3);
    await undo(2);
    expect(await file()).toMatchObject({ work: [], intents: {} });
    await undo(6);
    expect((await file()).work).toEqual([job]);
  });

  it('keeps a session that readings belong to, and a stay that holds anything', async () => {
    await book.store().openCycle(piano.id, 'p1');
    const session = await book.store().addSession(piano.id, { cycle: 2, state: 'found' }, 'p1');
    const { seq } = await book.store().writeReadings(piano.id, { cycle: 2, state: 'found', sessionId: session.id, entries: [{ quantity: 'downWeightG', scope: 'key', index: 1, typed: '50' }] }, 'p1');
    expect((await failureOf(undo(3))).issues).toMatchObject([{ params: { later: seq, place: session.id } }]);
    expect((await failureOf(undo(2))).issues).toMatchObject([{ params: { later: seq } }]);
    const withdrawn = await undo(seq);
    await undo(3);
    await undo(2);
    expect((await book.store().getPiano(piano.id)).instrument.cycle).toBe(1);
    expect((await failureOf(undo(withdrawn))).reason).toBe('notUndoable');
  });

  it('takes a piano back out of the lists while nothing builds on it; its log is kept, and it can come back', async () => {
    const first = await write([1, '50']);
    expect((await failureOf(undo(1))).issues).toMatchObject([{ params: { later: first } }]);
    await undo(first);
    const gone = await undo(1);
    expect((await failureOf(book.store().getPiano(piano.id))).reason).toBe('notFound');
    expect((await failureOf(write([1, '50']))).reason).toBe('notFound');
    expect((await book.store().listPianos()).some(({ instrument }) => instrument.id === piano.id)).toBe(false);
    expect(await book.store().listEvents(piano.id)).toHaveLength(4);
    await undo(gone);
    expect((await book.store().getPiano(piano.id)).instrument).toEqual(piano);
    await undo(3);
    expect(await standing()).toEqual({ 1: '50' });
  });
});
