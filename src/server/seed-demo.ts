import type { Instrument } from '#instrument';
import { type BenchStore, DEMO } from '#store';
import { seedSounds } from './seed-sounds.ts';
import { type DemoPiano, type DemoStep, demoShop } from '#workshop';

/** What the demonstration is written by in its own log. */
const BY = 'demo';

/** Adds the invented pianos to the demo workshop; where they stand already, answers those. Half a demo is never left. */
export async function seedDemo(store: BenchStore): Promise<{ readonly pianos: readonly Instrument[]; readonly added: number }> {
  const standing = (await store.listPianos()).flatMap(({ instrument }) => (instrument.demo ? [instrument] : []));
  if (standing.length > 0) return { pianos: standing, added: 0 };
  try {
    const pianos: Instrument[] = [];
    for (const piano of demoShop()) pianos.push(await writePiano(store, piano));
    return { pianos, added: pianos.length };
  } catch (error) {
    await store.removeDemo();
    throw error;
  }
}

async function writePiano(store: BenchStore, { draft, steps }: DemoPiano): Promise<Instrument> {
  const instrument = await store.addPiano(DEMO, draft, BY);
  const sessions = new Map<string, string>();
  for (const step of steps) await writeStep(store, instrument.id, step, sessions);
  await seedSounds(store, instrument, BY);
  return instrument;
}

async function writeStep(store: BenchStore, id: string, step: DemoStep, sessions: Map<string, string>): Promise<void> {
  switch (step.kind) {
    case 'session':
      sessions.set(step.ref, (await store.addSession(id, step.draft, BY)).id);
      break;
    case 'readings':
      await store.writeReadings(id, { ...step.batch, sessionId: step.sessionRef === null ? null : (sessions.get(step.sessionRef) ?? null) }, BY);
      break;
    case 'intent':
      await store.setIntent(id, step.cycle, step.intent, BY);
      break;
    case 'scale':
      await store.setScale(id, step.cycle, step.terms, BY);
      break;
    case 'action':
      await store.setAction(id, step.cycle, step.terms, BY);
      break;
    case 'tuning':
      await store.setTuning(id, step.cycle, step.terms, BY);
      break;
    case 'pass':
      await store.addPass(id, step.draft, BY);
      break;
    case 'observation':
      await store.addObservation(id, step.draft, BY);
      break;
    case 'work': {
      const items = await store.addWork(id, step.items, BY);
      if (step.done) for (const { id: workId } of items) await store.changeWork(id, workId, { status: 'done' }, BY);
      break;
    }
  }
}
