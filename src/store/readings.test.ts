import type { Instrument } from '#instrument';
import type { ReadingBatch, ReadingEntry } from '#workshop';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { SHOP } from './index.ts';
import { type TestBook, engines } from './testing/engines.ts';
import { failureOf } from './testing/failure.ts';

const down = (index: number, rest: Partial<ReadingEntry>): ReadingEntry => ({ quantity: 'downWeightG', scope: 'key', index, ...rest });

describe.each(engines)('readings ($name)', ({ open }) => {
  let book: TestBook;
  let piano: Instrument;
  beforeAll(async () => void (book = await open()));
  afterAll(() => book.remove());
  beforeEach(async () => void (piano = await book.store().addPiano(SHOP, { name: 'Upright', kind: 'upright' }, 'p1')));

  const write = (entries: ReadingEntry[], rest: Partial<ReadingBatch> = {}) => book.store().writeReadings(piano.id, { cycle: 1, state: 'found', entries, ...rest }, 'p1');
  const standing = () => book.store().listReadings(piano.id);
  const history = (index: number, quantity = 'downWeightG') => book.store().readingHistory(piano.id, { cycle: 1, state: 'found', quantity, index });
  const seq = async () => (await book.store().getPiano(piano.id)).head.seq;

  it('keeps beside its own time when a figure was typed, as the device says, through a session given later and an undo', async () => {
    const piano = await book.store().addPiano(SHOP, { name: 'Held on a device', kind: 'grand' }, 'p1');
    const typedAt = '2031-05-05T06:30:00.250Z';
    const { readings: [written] } = await book.store().writeReadings(piano.id, { cycle: 1, state: 'found', typedAt, entries: [{ quantity: 'downWeightG', scope: 'key', index: 7, typed: '51' }] }, 'p1');
    expect(written).toMatchObject({ typedAt });
    expect(Date.parse(written?.at ?? '')).toBeGreaterThan(Date.parse(typedAt));
    const session = await book.store().addSession(piano.id, { cycle: 1, state: 'found', stepG: 1 }, 'p1');
    const { seq } = await book.store().assignReadings(piano.id, session.id, { readings: [written?.id ?? ''] }, 'p1');
    expect(await book.store().listReadings(piano.id)).toMatchObject([{ typedAt, sessionId: session.id }]);
    await book.store().undo(piano.id, seq, 'p1');
    expect(await book.store().listReadings(piano.id)).toEqual([written]);
    const { readings: [bare] } = await book.store().writeReadings(piano.id, { cycle: 1, state: 'found', entries: [{ quantity: 'downWeightG', scope: 'key', index: 8, typed: '52' }] }, 'p1');
    expect(bare).not.toHaveProperty('typedAt');
    expect((await failureOf(book.store().writeReadings(piano.id, { cycle: 1, state: 'found', typedAt: 'this morning', entries: [{ quantity: 'downWeightG', scope: 'key', index: 9, typed: '52' }] }, 'p1'))).issues).toMatchObject([{ path: 'typedAt', given: 'this morning' }]);
  });

  it('keeps exactly what was typed, beside the value it was understood as', async () => {
    await write([down(40, { typed: '49,25' }), down(41, { typed: ' 1.7 oz' }), down(42, { typed: '30+19.5' })], { locale: 'de' });
    expect((await standing()).map(({ typed, value }) => [typed, value])).toEqual([['49,25', 49.25], [' 1.7 oz', 1.7 * 28.349523125], ['30+19.5', 49.5]]);
  });

  it('gives back every digit of a value', async () => {
    await write([down(1, { typed: '49.123456789012345' }), down(2, { typed: '0.1' }), down(3, { typed: '0.1+0.2' })]);
    expect((await standing()).map(({ value }) => value)).toEqual([49.123456789012345, 0.1, 0.1 + 0.2]);
  });

  it('keeps outcomes as outcomes, never as numbers', async () => {
    await write([down(40, { outcome: 'sticks', remark: 'hall side' })]);
    expect(await standing()).toMatchObject([{ outcome: 'sticks', value: null, typed: null, remark: 'hall side', basis: 'measured' }]);
  });

  it('supersedes, and keeps what was superseded', async () => {
    const first = await write([down(40, { typed: '52' })]);
    const second = await write([down(40, { typed: '51' })]);
    expect(await standing()).toMatchObject([{ typed: '51' }]);
    expect(await history(40)).toMatchObject([{ id: second.readings[0]?.id, standing: true, withdrawn: false }, { id: first.readings[0]?.id, typed: '52', standing: false, withdrawn: false }]);
  });

  it('clears a place, keeps what stood there, and writes nothing where nothing stands', async () => {
    await write([down(40, { typed: '52' })]);
    const cleared = await write([down(40, { clear: true }), down(41, { clear: true })]);
    expect(cleared.readings).toEqual([]);
    expect(await standing()).toEqual([]);
    expect(await history(40)).toMatchObject([{ typed: '52', standing: false, withdrawn: true }]);
    const before = await seq();
    expect((await write([down(41, { clear: true })])).seq).toBe(before);
    expect(await seq()).toBe(before);
  });

  it('warns of what is unlikely and keeps it; refuses what cannot be, names the cell, and writes nothing of the batch', async () => {
    const answer = await write([down(40, { typed: '90' })]);
    expect(answer.warnings).toMatchObject([{ path: 'entries[0].typed', given: '90', allowed: '35 to 75 g' }]);
    const before = await seq();
    const failure = await failureOf(write([down(41, { typed: '50' }), down(42, { typed: '900' }), down(43, { typed: 'fifty' }), down(89, { typed: '50' }), down(44, {}), down(45, { typed: '50', outcome: 'sticks' })]));
    expect(failure).toMatchObject({
      reason: 'refused',
      issues: [
        { path: 'entries[1].typed', given: '900', allowed: '0 to 300 g' },
        { path: 'entries[2].typed', given: 'fifty' },
        { path: 'entries[3]', given: 89, allowed: 'key 1 to 88' },
        { path: 'entries[4]', code: 'required' },
        { path: 'entries[5]', code: 'conflict' },
      ],
    });
    expect(await seq()).toBe(before);
    expect((await standing()).map(({ index }) => index)).toEqual([40]);
  });

  it('refuses unknown quantities, a place given twice, and text that could not be given back', async () => {
    expect((await failureOf(write([{ ...down(1, { typed: '5' }), quantity: 'weight' }]))).issues).toMatchObject([{ path: 'entries[0]', given: 'weight' }]);
    expect((await failureOf(write([down(1, { typed: '50' }), down(1, { typed: '51' })]))).issues).toMatchObject([{ path: 'entries[1]', code: 'duplicate' }]);
    expect((await failureOf(write([down(1, { typed: '50', remark: 'a\0b' })]))).issues).toMatchObject([{ path: 'entries[0].remark', code: 'format' }]);
    expect((await failureOf(write([down(1, { typed: '50', remark: '\ud83c' })]))).issues).toMatchObject([{ path: 'entries[0].remark', code: 'format' }]);
  });

  it('takes any whole text, however odd', async () => {
    const remark = '🎹 "quoted" \\ back\u2028slash \u0001 …\r\n\t{}$1';
    await write([down(1, { typed: '50', remark })]);
    expect((await standing())[0]?.remark).toBe(remark);
    expect((await book.store().audit(piano.id)).whole).toBe(true);
  });

  it('refuses to overwrite unseen, naming the place and what stands there', async () => {
    const mine = await write([down(40, { typed: '52', basedOn: null })]);
    const theirs = await write([down(40, { typed: '51', basedOn: mine.readings[0]?.id ?? '' })]);
    const failure = await failureOf(write([down(41, { typed: '50', basedOn: null }), down(40, { typed: '53', basedOn: mine.readings[0]?.id ?? '' })]));
    expect(failure).toMatchObject({ reason: 'conflict', issues: [{ path: 'entries[1].basedOn', given: '53', params: { place: 'c1/found/downWeightG/key/40/1' } }] });
    expect(failure.issues[0]?.allowed).toContain('51');
    expect(failure.issues[0]?.allowed).toContain(theirs.readings[0]?.id);
    expect((await standing()).map(({ typed }) => typed)).toEqual(['51']);
  });

  it('acknowledges a repeated send with the same answer and writes it once', async () => {
    const batch = { sendId: 'send-0001' };
    const first = await write([down(40, { typed: '90' })], batch);
    await write([down(40, { typed: '51' })]);
    expect(await write([down(40, { typed: '90' })], batch)).toEqual(first);
    expect((await standing()).map(({ typed }) => typed)).toEqual(['51']);
    expect(await failureOf(write([down(40, { typed: '49' })], batch))).toMatchObject({ reason: 'conflict', issues: [{ path: 'sendId' }] });
  });

  it('wants the session it names, of the same cycle and state', async () => {
    const session = await book.store().addSession(piano.id, { cycle: 1, state: 'finished' }, 'p1');
    const other = await book.store().addPiano(SHOP, { name: 'Other', kind: 'grand' }, 'p1');
    const foreign = await book.store().addSession(other.id, { cycle: 1, state: 'found' }, 'p1');
    for (const sessionId of ['none', session.id, foreign.id]) {
      expect(await failureOf(write([down(1, { typed: '50' })], { sessionId }))).toMatchObject({ reason: 'refused', issues: [{ path: 'sessionId', given: sessionId }] });
    }
    await write([down(1, { typed: '50' })], { sessionId: session.id, state: 'finished' });
    expect(await standing()).toMatchObject([{ sessionId: session.id, state: 'finished' }]);
  });

  it('keeps repeats, states and cycles apart, and counts those of the current stay', async () => {
    await write([down(1, { typed: '50' }), down(1, { typed: '51', repeat: 2 }), { quantity: 'keyFrontMm', scope: 'colour', index: 1, typed: '210' }]);
    await write([down(1, { typed: '48' })], { state: 'finished' });
    const counts = async () => (await book.store().listPianos()).find(({ instrument }) => instrument.id === piano.id)?.readingCounts;
    expect(await counts()).toEqual({ found: 3, planned: 0, finished: 1 });
    await book.store().openCycle(piano.id, 'p1');
    expect(await counts()).toEqual({ found: 0, planned: 0, finished: 0 });
    expect(await standing()).toEqual([]);
    expect(await book.store().listReadings(piano.id, 1)).toHaveLength(4);
  });

  it('writes a whole import as one event', async () => {
    const entries = Array.from({ length: 2000 }, (_, at) => down(1 + (at % 88), { typed: '50', repeat: 1 + Math.floor(at / 88) }));
    const before = await seq();
    const answer = await write(entries);
    expect(answer.readings).toHaveLength(2000);
    expect(await seq()).toBe(before + 1);
    expect((await book.store().listEvents(piano.id, { limit: 1 }))[0]?.changes).toHaveLength(2000);
  });
});
