import { states } from '#instrument';
import { checkInput } from '#operation';
import { type BenchStore, SHOP } from '#store';
import { type Answer, type Person, type RouteName, type Routes, shopKinds } from '#workshop';
import { z } from 'zod';
import { Refusal, accepted } from './failure.ts';
import { stockBookIn, stockRequestOf } from './stock-book.ts';
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

/** A count or a number of an event, as it stands in an address. */
export const wholeNumber = z.string().regex(/^\d{1,9}$/u, 'a whole number').transform(Number).pipe(z.number().int().min(1));
const placeQuery = z.object({ cycle: wholeNumber, state: z.enum(states), quantity: z.string(), index: z.string().regex(/^\d{1,4}$/u, 'a whole number').transform(Number) });
const cycleQuery = z.object({ cycle: wholeNumber.optional() });
const shopQuery = z.object({ kinds: z.string().transform((kinds) => kinds.split(',')).pipe(z.array(z.enum(shopKinds))).optional(), piano: z.string().max(60).optional(), person: z.string().max(60).optional(), open: z.enum(['true', 'false']).optional() });
const pianosQuery = z.object({ limit: wholeNumber.pipe(z.number().max(1000)).optional(), words: z.string().max(200).optional() });

/** What stands for a route whose work is done on the kept piano alone. */
export const storeHandlers = {
  listPianos: async ({ store, query }) => {
    const { limit, words } = accepted(checkInput(pianosQuery, query));
    const [pianos, counted] = await Promise.all([store.listPianos({ limit, words }), store.countPianos(words)]);
    return { pianos, ...counted };
  },
  listPianoNames: async ({ store }) => ({ pianos: await store.listPianoNames() }),
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
  addRoom: ({ store, params, body, by }) => store.addRoom(params.id, body, by),
  changeRoom: ({ store, params, body, by }) => store.changeRoom(params.id, params.oid, body, by),
  withdrawRoom: ({ store, params, by }) => store.withdrawRoom(params.id, params.oid, by),
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
  addWork: async ({ store, params, body, by }) => ({ work: [...(await store.addWork(params.id, body.items, by, body.expected))] }),
  changeWork: ({ store, params, body, by }) => store.changeWork(params.id, params.wid, body, by),
  changeJobs: async ({ store, params, body, by }) => ({ work: [...(await store.changeJobs(params.id, body.items, body.change, by))] }),
  getBench: ({ store }) => store.getBench(),
  setEstimate: ({ store, params, body, by }) => store.setEstimate(params.id, accepted(checkInput(cycleQuery.required(), params)).cycle, body, by),
  listShopEstimates: async ({ store, params }) => ({ estimates: [...(await store.listShopEstimates(params.id))] }),
  addQuote: ({ store, params, body, by }) => store.addQuote(params.id, body, by),
  changeQuote: ({ store, params, body, by }) => store.changeQuote(params.id, params.qid, body, by),
  withdrawQuote: ({ store, params, by }) => store.withdrawQuote(params.id, params.qid, by),
  sendQuote: ({ store, params, body, by }) => store.sendQuote(params.id, params.qid, body, by),
  answerQuote: ({ store, params, body, by }) => store.answerQuote(params.id, params.qid, body, by),
  addPaper: ({ store, params, body, by }) => store.addPaper(params.id, body, by),
  changePaper: ({ store, params, body, by }) => store.changePaper(params.id, params.rid, body, by),
  withdrawPaper: ({ store, params, by }) => store.withdrawPaper(params.id, params.rid, by),
  addCare: ({ store, params, body, by }) => store.addCare(params.id, body, by),
  changeCare: ({ store, params, body, by }) => store.changeCare(params.id, params.kid, body, by),
  withdrawCare: ({ store, params, by }) => store.withdrawCare(params.id, params.kid, by),
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
  getShop: async ({ store, query }) => {
    const { kinds, piano, person, open } = accepted(checkInput(shopQuery, query));
    return { cards: [...(await store.listShopCards({ kinds, pianoId: piano, person, isOpen: open === 'true' })).cards] };
  },
  addShopCard: ({ store, body, by }) => store.addShopCard(SHOP, body, by),
  changeShopCard: ({ store, params, body, by }) => store.changeShopCard(params.cid, body, by),
  withdrawShopCard: ({ store, params, by }) => store.withdrawShopCard(params.cid, by),
  receivePurchase: ({ store, params, body, by }) => store.receivePurchase(params.cid, body, by),
  getStockBook: ({ store, query }) => stockBookIn(store, stockRequestOf(query)),
  exportPerson: async ({ store, params }) => {
    const { contact, cards, quotes, care, personal, events } = await store.exportPerson(params.cid);
    return { contact, cards: [...cards], quotes: [...quotes], care: [...care], personal: [...personal], events: [...events] };
  },
  erasePerson: ({ store, params, by }) => store.erasePerson(params.cid, by),
  addDemo: async ({ store }) => ({ pianos: [...(await seedDemo(store)).pianos] }),
  removeDemo: async ({ store }) => ({ removed: await store.removeDemo() }),
  health: async ({ store, version }) => ({ status: 'ok', version, store: store.kind, demo: (await store.countPianos()).demo }),
} satisfies Partial<Handlers>;

async function personAt(store: BenchStore, reference: string): Promise<Person> {
  const person = (await store.listPeople(SHOP)).find((one) => one.reference === reference);
  if (person === undefined) throw new Refusal('notFound', [], 'Nobody is known by this reference');
  return person;
}
