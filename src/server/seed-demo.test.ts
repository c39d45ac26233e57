import { bookedHoursOf } from '#estimate';
import { benchColumns, benchTasksOf } from '#workshop';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { seedDemo } from './seed-demo.ts';
import { type OpenBench, openBench } from './testing/open-bench.ts';

let bench: OpenBench;
beforeAll(async () => {
  bench = await openBench();
});
afterAll(() => bench.close());

describe('the demonstration', () => {
  it('is written whole, once, and goes with all it held', async () => {
    const own = (await (await bench.send('POST', '/api/pianos', { name: 'My own', kind: 'upright' })).json()) as { id: string };
    const { pianos, added } = await seedDemo(bench.store);
    expect(added).toBeGreaterThan(0);
    for (const { id, demo } of pianos) {
      expect(demo).toBe(true);
      expect((await bench.store.audit(id)).whole).toBe(true);
    }
    const [first] = await bench.store.listPianos();
    expect(first?.instrument).toEqual(pianos[0]);
    expect(first?.readingCounts.found).toBeGreaterThanOrEqual(176);
    expect(first?.readingCounts.finished).toBeGreaterThanOrEqual(176);
    expect((await seedDemo(bench.store)).added).toBe(0);
    expect(await (await bench.send('POST', '/api/demo')).json()).toEqual({ pianos });
    expect(await (await bench.send('DELETE', '/api/demo')).json()).toEqual({ removed: pianos.length });
    expect((await bench.store.listPianos()).map(({ instrument }) => instrument.id)).toEqual([own.id]);
    expect(await (await bench.send('DELETE', '/api/demo')).json()).toEqual({ removed: 0 });
  });

  it('has a board with work in every column, things that wait for parts, glue and settling, and hours against the estimate', async () => {
    const now = new Date();
    const { pianos } = await seedDemo(bench.store, now);
    const board = await bench.store.getBench();
    const { cards } = await bench.store.listShopCards();
    const orders = new Map(cards.flatMap((card) => (card.kind === 'purchase' ? [[card.id, card] as const] : [])));
    const tasks = benchTasksOf(board.pianos, now, orders);
    expect([...new Set(tasks.map(({ column }) => column))].sort()).toEqual([...benchColumns].sort());
    expect(tasks.filter(({ column }) => column === 'waits').map(({ wait }) => wait?.for).sort()).toEqual(['glue', 'parts', 'settling']);
    const upright = board.pianos.find(({ instrument }) => instrument.id === pianos[1]?.id);
    const hours = cards.flatMap((card) => (card.kind === 'hours' && card.pianoId === pianos[1]?.id ? [card] : []));
    const { totalH, otherH, begun } = bookedHoursOf(upright?.estimate ?? null, 1, hours);
    expect([totalH, otherH, begun.bookedH]).toEqual([33.75, 0, 33.75]);
    await bench.store.removeDemo();
    expect((await bench.store.listShopCards()).cards).toEqual([]);
  });
});
