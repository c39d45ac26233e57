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
      const counts = (await bench.store.listPianos()).find(({ instrument }) => instrument.id === id)?.readingCounts;
      expect(counts?.found).toBeGreaterThanOrEqual(176);
      expect(counts?.finished).toBeGreaterThanOrEqual(176);
    }
    expect((await seedDemo(bench.store)).added).toBe(0);
    expect(await (await bench.send('POST', '/api/demo')).json()).toEqual({ pianos });
    expect(await (await bench.send('DELETE', '/api/demo')).json()).toEqual({ removed: pianos.length });
    expect((await bench.store.listPianos()).map(({ instrument }) => instrument.id)).toEqual([own.id]);
    expect(await (await bench.send('DELETE', '/api/demo')).json()).toEqual({ removed: 0 });
  });
});
