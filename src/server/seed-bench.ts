import type { Instrument } from '#instrument';
import { type BenchStore, DEMO } from '#store';
import { type DemoBench, demoBench } from '#workshop';

/** An invented piano that stands at the bench, before anything is said of its jobs. */
export interface SeededBench {
  readonly instrument: Instrument;
  /** Puts its jobs on the board, with what they wait for and the hours noted so far. */
  readonly putOnBoard: (supplier: string) => Promise<void>;
}

/** Adds the invented piano at the bench. */
export async function seedBench(store: BenchStore, now: Date, by: string): Promise<SeededBench> {
  const bench = demoBench(now);
  const instrument = await store.addPiano(DEMO, bench.draft, by);
  return { instrument, putOnBoard: (supplier) => putOnBoard(store, instrument.id, { ...bench, supplier, by }) };
}

async function putOnBoard(store: BenchStore, id: string, { estimate, orderOf, jobs, supplier, by }: DemoBench & { readonly supplier: string; readonly by: string }): Promise<void> {
  await store.setEstimate(id, 1, estimate, by);
  const order = await store.addShopCard(DEMO, orderOf(id, supplier), by);
  const items = await store.addWork(id, jobs.map(({ item }) => item), by);
  for (const [index, { moved, hours = [] }] of jobs.entries()) {
    const work = items[index]?.id ?? '';
    if (moved !== undefined) await store.changeWork(id, work, moved(order.id), by);
    for (const noted of hours) await store.addShopCard(DEMO, { kind: 'hours', pianoId: id, cycle: 1, jobs: [work], details: { words: 'Invented for demonstration.' }, ...noted }, by);
  }
}
