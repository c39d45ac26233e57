import { randomUUID } from 'node:crypto';
import { type BenchStore, SHOP, openStore } from '#store';

const DAY_MS = 86_400_000;
/** Days on which the stays of the invented piano begin. */
const STAYS = ['1986-02-03', '1997-09-15', '2011-05-09', '2025-10-06'] as const;

/** How much is written of a life. */
export interface Life {
  /** Days of weighing in each stay, and figures weighed on each of them: every figure is an event. */
  readonly days: number;
  readonly figures: number;
}

/**
 * Writes the invented life of a piano through the program's own store: three owners with a gap between two of them, four stays in
 * the shop over forty years, in each of which it is weighed, worked on and weighed again.
 * @returns the id of the piano
 */
export async function writeDecades(dataDir: string, { days, figures }: Life): Promise<string> {
  let now = Date.parse(`${STAYS[0]}T08:00:00Z`);
  const store = await openStore({ dataDir, clock: () => new Date((now += 1000)), newId: randomUUID });
  try {
    const { id } = await store.addPiano(SHOP, { name: 'Grand of four stays, invented', kind: 'grand', year: 1926, remark: 'Invented for a test.' }, 'test');
    for (const [index, begun] of STAYS.entries()) {
      now = Date.parse(`${begun}T08:00:00Z`);
      if (index > 0) await store.openCycle(id, 'test');
      await writeStay(store, id, index + 1, { days, figures }, (later) => { now = Date.parse(`${begun}T08:00:00Z`) + later * DAY_MS; });
    }
    await writeOwners(store, id);
    return id;
  } finally {
    await store.close();
  }
}

async function writeStay(store: BenchStore, id: string, cycle: number, { days, figures }: Life, moveTo: (later: number) => void): Promise<void> {
  const weigh = async (state: 'found' | 'finished', from: number, first: number): Promise<void> => {
    const { id: sessionId } = await store.addSession(id, { cycle, state, stepG: 0.5, remark: `Stay ${String(cycle)}, ${state}` }, 'test');
    for (let day = 0; day < days; day += 1) {
      moveTo(from + day);
      for (let figure = 0; figure < figures; figure += 1) {
        const index = (day * figures + figure) % 88 + 1;
        const entry = { quantity: 'downWeightG', scope: 'key', index, typed: String(first + ((index * 7) % 5) / 2) } as const;
        await store.writeReadings(id, { cycle, state, sessionId, entries: [entry] }, 'test');
      }
    }
  };
  await weigh('found', 0, 52);
  const [eased, glued] = await store.addWork(id, [{ cycle, key: 40, remedy: 'easeKeyBushing', stage: 1 }, { cycle, key: null, remedy: 'other', remark: `Glue the rib, stay ${String(cycle)}`, stage: 5 }], 'test');
  for (const job of [eased, glued]) if (job !== undefined) await store.changeWork(id, job.id, { status: 'done' }, 'test');
  await weigh('finished', days + 10, 48);
}

async function writeOwners(store: BenchStore, pianoId: string): Promise<void> {
  const owners = [['First owner, invented', '1926', '1984'], ['Second owner, invented', '1985-06', '2001-03'], ['Third owner, invented', '2004', null]] as const;
  for (const [name, from, until] of owners) {
    const { id: person } = await store.addShopCard(SHOP, { kind: 'contact', roles: ['customer'], details: { name } }, 'test');
    await store.addShopCard(SHOP, { kind: 'ownership', person, pianoId, relation: 'owns', from, until }, 'test');
  }
}
