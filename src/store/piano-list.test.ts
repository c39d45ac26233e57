import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { DEMO, SHOP } from './bench-store.ts';
import { type TestBook, engines } from './testing/engines.ts';

describe.each(engines)('the list of pianos, $name', ({ open }) => {
  let book: TestBook;
  const ids = new Map<string, string>();
  beforeAll(async () => {
    book = await open();
    for (const name of ['Alder', 'Beech 100%', 'Cherry_1', 'Cherry 21']) ids.set(name, (await book.store().addPiano(SHOP, { name, kind: 'grand' }, 'p1')).id);
    const entries = [1, 2, 3].map((index) => ({ quantity: 'downWeightG', scope: 'key' as const, index, typed: '49' }));
    await book.store().writeReadings(ids.get('Alder') ?? '', { cycle: 1, state: 'found', entries }, 'p1');
  });
  afterAll(() => book.remove());
  const names = async (page?: { limit?: number; words?: string }) => (await book.store().listPianos(page)).map(({ instrument }) => instrument.name);

  it('is in the order of the last step, and a page is its beginning with the same counts', async () => {
    const all = await book.store().listPianos();
    expect(all.map(({ instrument }) => instrument.name)[0]).toBe('Alder');
    expect(all[0]?.readingCounts).toEqual({ found: 3, planned: 0, finished: 0 });
    expect(await book.store().listPianos({ limit: 2 })).toEqual(all.slice(0, 2));
    expect(await book.store().countPianos()).toEqual({ total: 4, demo: false });
  });

  it('is searched by name, whatever the case, and signs are nothing but themselves', async () => {
    expect((await names({ words: 'CHERRY' })).sort()).toEqual(['Cherry 21', 'Cherry_1']);
    expect(await names({ words: 'y_1' })).toEqual(['Cherry_1']);
    expect(await names({ words: '100%' })).toEqual(['Beech 100%']);
    expect(await names({ words: String.raw`\ ` })).toEqual([]);
    expect(await book.store().countPianos('cherry')).toEqual({ total: 2, demo: false });
  });

  it('moves a piano to the front with a step and with its undo, and counts the stay it is in', async () => {
    const cherry = ids.get('Cherry_1') ?? '';
    await book.store().changePiano(cherry, { year: 1920 }, 'p1');
    expect((await names())[0]).toBe('Cherry_1');
    await book.store().openCycle(ids.get('Alder') ?? '', 'p1');
    expect(await book.store().listPianos({ limit: 1 })).toMatchObject([{ instrument: { name: 'Alder' }, readingCounts: { found: 0 } }]);
    const [last] = await book.store().listEvents(cherry, { limit: 1 });
    await book.store().undo(cherry, last?.seq ?? 0, 'p1');
    expect((await names())[0]).toBe('Cherry_1');
  });

  it('knows the demonstration, and names by id', async () => {
    const { id } = await book.store().addPiano(DEMO, { name: 'Demo', kind: 'grand' }, 'demo');
    expect(await book.store().countPianos('alder')).toEqual({ total: 1, demo: true });
    expect(await book.store().listPianoNames()).toContainEqual({ id, name: 'Demo' });
  });
});
