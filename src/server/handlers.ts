import { states } from '#instrument';
import { checkInput } from '#operation';
import { type BenchStore, SHOP } from '#store';
import type { Answer, Person, RouteName, Routes } from '#workshop';
import { z } from 'zod';
import { Refusal, accepted } from './failure.ts';
import { seedDemo } from './seed-demo.ts';

/** Names after a colon in a path. */
type PathNames<Path extends string> = Path extends `${string}:${infer Name}/${infer Rest}` ? Name | PathNames<Rest> : Path extends `${string}:${infer Name}` ? Name : never;

/** What a handler is given: the request, checked by the route's own schemas. */
export interface Call<N extends RouteName> {
  readonly store: BenchStore;
  readonly version: string;
  /** Reference of the person who asks. */
  readonly by: string;
  readonly params: Readonly<Record<PathNames<Routes[N]['path']>, string>>;
  readonly query: Routes[N] extends { readonly query: infer Q extends z.ZodType } ? z.output<Q> : undefined;
  readonly body: Routes[N] extends { readonly body: infer B extends z.ZodType } ? z.output<B> : undefined;
}

/** One handler for every route of the workshop: a route without one does not compile. */
export type Handlers = { readonly [N in RouteName]: (call: Call<N>) => Promise<Answer<N>> };

const wholeNumber = z.string().regex(/^\d{1,9}$/u, 'a whole number').transform(Number).pipe(z.number().int().min(1));
const placeQuery = z.object({ cycle: wholeNumber, state: z.enum(states), quantity: z.string(), index: z.string().regex(/^\d{1,4}$/u, 'a whole number').transform(Number) });
const cycleQuery = z.object({ cycle: wholeNumber.optional() });
const eventsQuery = z.object({ before: wholeNumber.optional(), limit: wholeNumber.pipe(z.number().max(1000)).optional() });

/** What stands for a route whose work is done on the kept piano alone. */
export const storeHandlers = {
  listPianos: async ({ store }) => ({ pianos: await store.listPianos() }),
  addPiano: ({ store, body, by }) => store.addPiano(SHOP, body, by),
  getPiano: ({ store, params }) => store.getPiano(params.id),
  changePiano: ({ store, params, body, by }) => store.changePiano(params.id, body, by),
  openCycle: ({ store, params, by }) => store.openCycle(params.id, by),
  addSession: ({ store, params, body, by }) => store.addSession(params.id, body, by),
  changeSession: ({ store, params, body, by }) => store.changeSession(params.id, params.sid, body, by),
  assignReadings: ({ store, params, body, by }) => store.assignReadings(params.id, params.sid, body, by),
  listReadings: async ({ store, params, query }) => ({ readings: [...(await store.listReadings(params.id, accepted(checkInput(cycleQuery, query)).cycle))] }),
  readingHistory: async ({ store, params, query }) => ({ readings: await store.readingHistory(params.id, accepted(checkInput(placeQuery, query))) }),
  writeReadings: ({ store, params, body, by }) => store.writeReadings(params.id, body, by),
  setIntent: ({ store, params, body, by }) => store.setIntent(params.id, accepted(checkInput(cycleQuery.required(), params)).cycle, body, by),
  setScale: ({ store, params, body, by }) => store.setScale(params.id, accepted(checkInput(cycleQuery.required(), params)).cycle, body, by),
  setAction: ({ store, params, body, by }) => store.setAction(params.id, accepted(checkInput(cycleQuery.required(), params)).cycle, body, by),
  setTuning: ({ store, params, body, by }) => store.setTuning(params.id, accepted(checkInput(cycleQuery.required(), params)).cycle, body, by),
  addPass: ({ store, params, body, by }) => store.addPass(params.id, body, by),
  changePass: ({ store, params, body, by }) => store.changePass(params.id, params.pid, body, by),
  withdrawPass: ({ store, params, by }) => store.withdrawPass(params.id, params.pid, by),
  listShopPasses: async ({ store, params }) => ({ passes: [...(await store.listShopPasses(params.id))] }),
  addObservation: ({ store, params, body, by }) => store.addObservation(params.id, body, by),
  changeObservation: ({ store, params, body, by }) => store.changeObservation(params.id, params.oid, body, by),
  withdrawObservation: ({ store, params, by }) => store.withdrawObservation(params.id, params.oid, by),
  listRecordings: async ({ store, params }) => ({ recordings: [...(await store.listRecordings(params.id))] }),
  addRecording: async ({ store, params, body, by }) => {
    const recording = await store.addRecording(params.id, body, by);
    await store.askAnalysis(params.id, [recording.id]);
    return recording;
  },
  changeRecording: async ({ store, params, body, by }) => {
    const recording = await store.changeRecording(params.id, params.rid, body, by);
    await store.askAnalysis(params.id, [recording.id]);
    return recording;
  },
  withdrawRecording: ({ store, params, by }) => store.withdrawRecording(params.id, params.rid, by),
  listAnalyses: async ({ store, params }) => ({ analyses: [...(await store.listAnalyses(params.id))] }),
  analyseRecordings: async ({ store, params, body }) => ({ jobs: [...(await store.askAnalysis(params.id, body.recordings, body.again))] }),
  listJobs: async ({ store, params }) => ({ jobs: [...(await store.listJobs(params.id))] }),
  cancelJob: ({ store, params }) => store.cancelJob(params.id, params.jid),
  listEvents: async ({ store, params, query }) => ({ events: [...(await store.listEvents(params.id, accepted(checkInput(eventsQuery, query))))] }),
  undo: ({ store, params, body, by }) => store.undo(params.id, body.seq, by),
  audit: ({ store, params }) => store.audit(params.id),
  addWork: async ({ store, params, body, by }) => ({ work: [...(await store.addWork(params.id, body.items, by, body.expected))] }),
  changeWork: ({ store, params, body, by }) => store.changeWork(params.id, params.wid, body, by),
  listPeople: async ({ store }) => ({ people: [...(await store.listPeople(SHOP))] }),
  addPerson: ({ store, body }) => store.addPerson(SHOP, body.name),
  namePerson: async ({ store, params, body }) => {
    await personAt(store, params.reference);
    await store.namePerson(SHOP, params.reference, body.name);
    return await personAt(store, params.reference);
  },
  forgetPerson: async ({ store, params }) => {
    const person = await personAt(store, params.reference);
    await store.namePerson(SHOP, params.reference, null);
    return person;
  },
  addDemo: async ({ store }) => ({ pianos: [...(await seedDemo(store)).pianos] }),
  removeDemo: async ({ store }) => ({ removed: await store.removeDemo() }),
  health: async ({ store, version }) => ({ status: 'ok', version, store: store.kind, demo: (await store.listPianos()).some(({ instrument }) => instrument.demo) }),
} satisfies Partial<Handlers>;

async function personAt(store: BenchStore, reference: string): Promise<Person> {
  const person = (await store.listPeople(SHOP)).find((one) => one.reference === reference);
  if (person === undefined) throw new Refusal('notFound', [], 'Nobody is known by this reference');
  return person;
}
