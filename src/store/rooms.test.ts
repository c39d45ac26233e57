import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { SHOP } from './index.ts';
import { type TestBook, engines } from './testing/engines.ts';
import { failureOf } from './testing/failure.ts';

const grand = { name: 'Grand in a room', kind: 'grand' } as const;
const plaster = { surface: 'plaster-on-brick', own: null } as const;
const room = { cycle: 1, name: 'Studio', plan: { shape: 'box', lengthMm: 6000, widthMm: 4500 }, heightMm: 2800, floor: plaster, ceiling: plaster, walls: [plaster, plaster, plaster, plaster] } as const;

describe.each(engines)('rooms ($name)', ({ open }) => {
  let book: TestBook;
  beforeAll(async () => void (book = await open()));
  afterAll(() => book.remove());
  const store = () => book.store();

  it('are kept beside each other, changed, withdrawn and brought back', async () => {
    const { id } = await store().addPiano(SHOP, grand, 'p1');
    const draft = { ...room, walls: [...room.walls] };
    const [one, other] = [await store().addRoom(id, draft, 'p1'), await store().addRoom(id, { ...draft, name: 'Studio with a rug', things: [{ words: 'Rug', face: { surface: 'carpet-on-felt', own: null }, areaM2: 9.5, on: 'floor' }] }, 'p1')];
    expect(one).toMatchObject({ use: null, people: 0, things: [], measured: [], piano: null });
    const changed = await store().changeRoom(id, one.id, { humidityPct: 44.5, floor: { surface: null, own: [0.1, 0.1, 0.1, 0.1, 0.1, 0.123456789] } }, 'p2');
    expect(changed).toEqual({ ...one, humidityPct: 44.5, floor: { surface: null, own: [0.1, 0.1, 0.1, 0.1, 0.1, 0.123456789] } });
    expect((await store().listEvents(id))[0]).toMatchObject({ kind: 'room.changed', by: 'p2', changes: [{ before: { humidityPct: null }, after: { humidityPct: 44.5 } }] });
    await store().withdrawRoom(id, one.id, 'p1');
    expect((await store().getPiano(id)).rooms).toEqual([other]);
    await store().undo(id, 5, 'p1');
    expect((await store().getPiano(id)).rooms).toEqual([changed, other]);
    expect((await store().audit(id)).whole).toBe(true);
  });

  it('are refused by field where they do not fit together', async () => {
    const { id } = await store().addPiano(SHOP, grand, 'p1');
    const refused = async (change: object) => (await failureOf(store().addRoom(id, { ...room, walls: [...room.walls], ...change }, 'p1'))).issues.map(({ code, path }) => `${code} ${path}`);
    expect(await refused({ cycle: 2 })).toEqual(['range cycle']);
    expect(await refused({ walls: [plaster, plaster, plaster] })).toEqual(['range walls']);
    expect(await refused({ floor: { surface: null, own: null } })).toHaveLength(1);
    expect(await refused({ things: [{ words: '', face: plaster, areaM2: 28, on: 'floor' }] })).toEqual(['range things[0].areaM2']);
    expect(await refused({ measured: [{ on: '2026-11-20', file: 'a.wav', sound: 'a'.repeat(64), impulseCount: 1, edtS: Array(6).fill(null), t20S: Array(6).fill(null), t30S: Array(6).fill(null), quality: [] }] })).toEqual(['unknown measured[0].sound']);
  });
});
