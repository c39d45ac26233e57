import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { DEMO, SHOP } from './index.ts';
import { type TestBook, engines } from './testing/engines.ts';
import { failureOf } from './testing/failure.ts';

const grand = { name: 'Grand to be raised', kind: 'grand' } as const;
const pass = { cycle: 1, day: '2026-03-02', time: '09:30', stretch: 'tenor', foundCt: -40, leftCt: 10.25 } as const;

describe.each(engines)('tuning and passes ($name)', ({ open }) => {
  let book: TestBook;
  beforeAll(async () => void (book = await open()));
  afterAll(() => book.remove());
  const store = () => book.store();

  it('keeps the terms of a stay whole, and takes them back', async () => {
    const piano = await store().addPiano(SHOP, grand, 'p1');
    const terms = await store().setTuning(piano.id, 1, { temperament: 'well1800', octaves: [{ fromKey: 1, toKey: 30, type: '6:3' }], strungOn: '2026-03-01' }, 'p1');
    expect(terms).toMatchObject({ temperament: 'well1800', root: null, smoothness: null, driftToleranceCt: null });
    expect((await store().getPiano(piano.id)).tunings).toEqual({ 1: terms });
    expect(await failureOf(store().setTuning(piano.id, 1, { octaves: [{ fromKey: 30, toKey: 1, type: '6:3' }] }, 'p1'))).toMatchObject({ issues: [{ path: 'octaves[0].toKey' }] });
    await store().undo(piano.id, 2, 'p1');
    expect((await store().getPiano(piano.id)).tunings).toEqual({});
  });

  it('keeps, corrects and withdraws a pass, and brings it back by undo', async () => {
    const piano = await store().addPiano(SHOP, grand, 'p1');
    const kept = await store().addPass(piano.id, pass, 'p1');
    expect(kept).toMatchObject({ ...pass, temperatureC: null, humidityPct: null, remark: '' });
    const changed = await store().changePass(piano.id, kept.id, { leftCt: 12, humidityPct: 44 }, 'p2');
    expect(changed).toEqual({ ...kept, leftCt: 12, humidityPct: 44 });
    expect((await store().listEvents(piano.id))[0]).toMatchObject({ kind: 'pass.changed', by: 'p2', changes: [{ before: { leftCt: 10.25, humidityPct: null }, after: { leftCt: 12, humidityPct: 44 } }] });
    await store().withdrawPass(piano.id, kept.id, 'p1');
    expect((await store().getPiano(piano.id)).passes).toEqual([]);
    await store().undo(piano.id, 4, 'p1');
    expect((await store().getPiano(piano.id)).passes).toEqual([changed]);
    expect((await store().audit(piano.id)).whole).toBe(true);
  });

  it('refuses a stay that has not been, a time that is none and a pitch out of reach, by field', async () => {
    const piano = await store().addPiano(SHOP, grand, 'p1');
    const refused = async (change: object) => (await failureOf(store().addPass(piano.id, { ...pass, ...change }, 'p1'))).issues.map(({ code, path }) => `${code} ${path}`);
    expect(await refused({ cycle: 2 })).toEqual(['range cycle']);
    expect(await refused({ time: '25:00' })).toEqual(['format time']);
    expect(await refused({ foundCt: -1400 })).toEqual(['range foundCt']);
    expect(await refused({ day: '2026-02-30' })).toEqual(['format day']);
  });

  it('tells the passes of the whole workshop, and not those of another', async () => {
    const [one, other, demo] = [await store().addPiano(SHOP, grand, 'p1'), await store().addPiano(SHOP, grand, 'p1'), await store().addPiano(DEMO, grand, 'p1')];
    for (const { id } of [one, other, demo]) await store().addPass(id, pass, 'p1');
    const told = (await store().listShopPasses(one.id)).map(({ pianoId }) => pianoId);
    expect(told).toEqual(expect.arrayContaining([one.id, other.id]));
    expect(told).not.toContain(demo.id);
  });
});
