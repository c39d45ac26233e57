import type { Instrument, WeighingSession } from '#instrument';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { SHOP } from '../index.ts';
import { type TestBook, engines } from '../testing/engines.ts';
import { failureOf } from '../testing/failure.ts';

describe.each(engines)('putting readings into a session afterwards ($name)', ({ open }) => {
  let book: TestBook;
  let piano: Instrument;
  let session: WeighingSession;
  beforeAll(async () => void (book = await open()));
  afterAll(() => book.remove());
  beforeEach(async () => {
    piano = await book.store().addPiano(SHOP, { name: 'Grand', kind: 'grand' }, 'p1');
    session = await book.store().addSession(piano.id, { cycle: 1, state: 'found', stepG: 1 }, 'p1');
  });

  const write = (index: number, typed: string, sessionId: string | null = null) =>
    book.store().writeReadings(piano.id, { cycle: 1, state: 'found', sessionId, locale: 'de', entries: [{ quantity: 'downWeightG', scope: 'key', index, typed, remark: 'hall side' }] }, 'p1');
  const standing = () => book.store().listReadings(piano.id);
  const ids = async () => (await standing()).map(({ id }) => id);

  it('changes the session and nothing else: typed text, value, remark, who and when stay', async () => {
    await write(1, '49,50');
    await write(2, '50');
    const before = await standing();
    const { readings } = await book.store().assignReadings(piano.id, session.id, { readings: before.map(({ id }) => id) }, 'p2');
    const after = await standing();
    expect(after.map(({ id: _, ...rest }) => rest)).toEqual(before.map(({ id: _, ...rest }) => ({ ...rest, sessionId: session.id })));
    expect(readings.map(({ id }) => id)).toEqual(after.map(({ id }) => id));
  });

  it('is one event, and one undo takes it back whole', async () => {
    await write(1, '49');
    await write(2, '50');
    const before = await standing();
    const { seq } = await book.store().assignReadings(piano.id, session.id, { readings: await ids() }, 'p2');
    const [event] = await book.store().listEvents(piano.id, { limit: 1 });
    expect(event).toMatchObject({ seq, kind: 'readings.assigned', by: 'p2' });
    expect(event?.changes).toHaveLength(2);
    await book.store().undo(piano.id, seq, 'p2');
    expect(await standing()).toEqual(before);
    expect(await book.store().audit(piano.id)).toMatchObject({ whole: true });
  });

  it('writes nothing for readings that belong to it already', async () => {
    const { seq } = await write(1, '49', session.id);
    expect(await book.store().assignReadings(piano.id, session.id, { readings: await ids() }, 'p1')).toEqual({ seq, readings: [] });
  });

  it('refuses what another wrote over meanwhile, what another session states, and another state; nothing is written', async () => {
    const [old] = (await write(1, '49')).readings;
    await write(1, '50');
    const other = await book.store().addSession(piano.id, { cycle: 1, state: 'found' }, 'p1');
    const [stated] = (await write(2, '51', other.id)).readings;
    const { head } = await book.store().getPiano(piano.id);
    const failure = await failureOf(book.store().assignReadings(piano.id, session.id, { readings: [old?.id ?? '', stated?.id ?? ''] }, 'p1'));
    expect(failure).toMatchObject({ reason: 'conflict', issues: [{ path: 'readings[0]' }, { path: 'readings[1]', allowed: 'readings that belong to no session' }] });
    const finished = await book.store().addSession(piano.id, { cycle: 1, state: 'finished' }, 'p1');
    expect(await failureOf(book.store().assignReadings(piano.id, finished.id, { readings: [(await ids())[0] ?? ''] }, 'p1'))).toMatchObject({ reason: 'conflict' });
    expect((await book.store().getPiano(piano.id)).head.seq).toBe(head.seq + 1);
  });

  it('holds the session: it cannot be withdrawn while readings were put into it', async () => {
    await write(1, '49');
    const [opened] = (await book.store().listEvents(piano.id)).filter(({ kind }) => kind === 'session.added');
    await book.store().assignReadings(piano.id, session.id, { readings: await ids() }, 'p1');
    expect(await failureOf(book.store().undo(piano.id, opened?.seq ?? 0, 'p1'))).toMatchObject({ reason: 'notUndoable' });
  });
});
