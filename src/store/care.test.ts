import { createHash } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type LoggerFile, usualPlan } from '#workshop';
import { SHOP } from './index.ts';
import { type TestBook, engines } from './testing/engines.ts';
import { failureOf } from './testing/failure.ts';

const grand = { name: 'Grand in a dry room', kind: 'grand' } as const;
const air = { kind: 'air', at: '2026-01-13T09:30', temperatureC: 19.25, humidityPct: 38 } as const;
const file: LoggerFile = {
  fileName: 'logger.csv', remark: '', from: '2026-01-01T00:00', until: '2026-01-01T01:00', readings: 2, leftOut: 0,
  reading: { headRows: 1, dayColumn: 0, timeColumn: null, dayOrder: 'ymd', humidityColumn: 1, temperatureColumn: null, temperatureUnit: 'C', decimalSign: '.' },
};
const bytes = new TextEncoder().encode('Time;RH\n2026-01-01 00:00;40\n2026-01-01 01:00;41\n');

describe.each(engines)('air, plan of care and moves ($name)', ({ open }) => {
  let book: TestBook;
  beforeAll(async () => void (book = await open()));
  afterAll(() => book.remove());
  const store = () => book.store();
  const careOf = async (id: string) => (await store().getPiano(id)).care;

  it('keeps, changes and withdraws a reading of the air, and brings it back by undo', async () => {
    const piano = await store().addPiano(SHOP, grand, 'p1');
    const kept = await store().addCare(piano.id, air, 'p1');
    expect(kept).toMatchObject({ ...air, pitchCt: null, remark: '' });
    const changed = await store().changeCare(piano.id, kept.id, { kind: 'air', humidityPct: 37.5 }, 'p1');
    expect(changed).toEqual({ ...kept, humidityPct: 37.5 });
    await store().withdrawCare(piano.id, kept.id, 'p1');
    expect(await careOf(piano.id)).toEqual([]);
    await store().undo(piano.id, 4, 'p1');
    expect(await careOf(piano.id)).toEqual([changed]);
    expect(await store().audit(piano.id)).toMatchObject({ whole: true });
  });

  it('keeps a logger’s file whole by its hash, and adds nothing where the same file comes again', async () => {
    const piano = await store().addPiano(SHOP, grand, 'p1');
    const kept = await store().addLogger(piano.id, bytes, file, 'p1');
    expect(kept).toMatchObject({ kind: 'logger', hash: createHash('sha256').update(bytes).digest('hex'), readings: 2 });
    expect(new Uint8Array(await store().readLoggerFile(kept.id))).toEqual(bytes);
    expect(await failureOf(store().addLogger(piano.id, bytes, { ...file, fileName: 'again.csv' }, 'p1'))).toMatchObject({ reason: 'conflict', issues: [{ path: 'file' }] });
    expect(await careOf(piano.id)).toHaveLength(1);
    await store().withdrawCare(piano.id, kept.id, 'p1');
    expect(await store().addLogger(piano.id, bytes, file, 'p1')).toMatchObject({ id: kept.id });
    expect(await careOf(piano.id)).toHaveLength(1);
  });

  it('has one plan at a time, and refuses what does not go together by its cell', async () => {
    const piano = await store().addPiano(SHOP, grand, 'p1');
    await store().addCare(piano.id, usualPlan, 'p1');
    expect(await failureOf(store().addCare(piano.id, usualPlan, 'p1'))).toMatchObject({ reason: 'conflict', issues: [{ path: 'plan' }] });
    expect(await failureOf(store().changeCare(piano.id, 'plan', { kind: 'plan', highPct: 30 }, 'p1'))).toMatchObject({ reason: 'refused', issues: [{ path: 'highPct', given: 30 }] });
    expect(await failureOf(store().changeCare(piano.id, 'plan', { kind: 'move', steps: 3 }, 'p1'))).toMatchObject({ reason: 'refused', issues: [{ path: 'kind' }] });
    const arrival = { temperatureC: 20, humidityPct: 45, surfaceC: 3, laterC: 8, betweenHours: null };
    expect(await failureOf(store().addCare(piano.id, { kind: 'move', on: '2026-01-13', arrival, legs: 3, heaviestPct: 20 }, 'p1'))).toMatchObject({ issues: [{ path: 'arrival.betweenHours' }, { path: 'heaviestPct' }] });
  });
});
