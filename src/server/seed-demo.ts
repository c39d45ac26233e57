import type { Instrument } from '#instrument';
import { type BenchStore, DEMO } from '#store';
import { type SeededBench, seedBench } from './seed-bench.ts';
import { seedCare } from './seed-care.ts';
import { seedSounds } from './seed-sounds.ts';
import { type DemoPiano, type DemoStep, demoShop, demoShopCards } from '#workshop';

/** What the demonstration is written by in its own log. */
const BY = 'demo';

/** Adds the invented pianos to the demo workshop; where they stand already, answers those. Half a demo is never left. */
export async function seedDemo(store: BenchStore, now = new Date()): Promise<{ readonly pianos: readonly Instrument[]; readonly added: number }> {
  const standing = (await store.listPianos()).flatMap(({ instrument }) => (instrument.demo ? [instrument] : []));
  if (standing.length > 0) return { pianos: standing, added: 0 };
  try {
    const bench = await seedBench(store, now, BY);
    const pianos: Instrument[] = [];
    for (const piano of demoShop()) pianos.push(await writePiano(store, piano, (id) => writeShop(store, id, bench)));
    return { pianos: [...pianos, bench.instrument], added: pianos.length + 1 };
  } catch (error) {
    await store.removeDemo();
    throw error;
  }
}

/** The list of pianos begins with what was written to last: all the rest of the demo is written before the steps of its first piano. */
async function writePiano(store: BenchStore, { draft, steps }: DemoPiano, writeRest: (id: string) => Promise<void>): Promise<Instrument> {
  const instrument = await store.addPiano(DEMO, draft, BY);
  await writeRest(instrument.id);
  const sessions = new Map<string, string>();
  for (const step of steps) await writeStep(store, instrument.id, step, sessions);
  await seedCare(store, instrument, BY);
  await seedSounds(store, instrument, BY);
  return instrument;
}

/** The people around the first piano, what is arranged with them, and the board of the bench. */
async function writeShop(store: BenchStore, pianoId: string, { putOnBoard }: SeededBench): Promise<void> {
  const ids = new Map<string, string>();
  const idOf = (ref: string): string => {
    const id = ids.get(ref);
    if (id === undefined) throw new Error(`the demo names a card it has not made: ${ref}`);
    return id;
  };
  for (const { ref, draftOf } of demoShopCards()) ids.set(ref, (await store.addShopCard(DEMO, draftOf({ pianoId, idOf }), BY)).id);
  await putOnBoard(idOf('strings'));
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
    case 'room':
      await store.addRoom(id, step.draft, BY);
      break;
    case 'observation':
      await store.addObservation(id, step.draft, BY);
      break;
    case 'paper':
      await store.addPaper(id, step.draft, BY);
      break;
    case 'estimate':
      await store.setEstimate(id, step.cycle, step.draft, BY);
      break;
    case 'quote': {
      const quote = await store.addQuote(id, step.draft, BY);
      await store.sendQuote(id, quote.id, { on: step.sentOn }, BY);
      await store.answerQuote(id, quote.id, step.answer, BY);
      break;
    }
    case 'work': {
      const items = await store.addWork(id, step.items, BY);
      if (step.done) for (const { id: workId } of items) await store.changeWork(id, workId, { status: 'done' }, BY);
      break;
    }
  }
}
