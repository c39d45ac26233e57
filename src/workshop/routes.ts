import { actionTermsSchema, daySchema, instrumentDraftSchema, instrumentSchema, observationDraftSchema, observationSchema, readingSchema, recordingDraftSchema, recordingSchema, scaleTermsSchema, sessionDraftSchema, sessionSchema, touchIntentSchema, tuningPassDraftSchema, tuningPassSchema, tuningTermsSchema } from '#instrument';
import { z } from 'zod';
import { analysisSchema, jobSchema } from './analysis.ts';
import { airHoursSchema } from './care/hours.ts';
import { loggerPreviewSchema, loggerSourceSchema } from './care/logger-plan.ts';
import { careCardSchema, careChangeSchema, careDraftSchema } from './care/records.ts';
import { changeOf } from './change.ts';
import { estimateSchema } from './estimate.ts';
import { paperChangeSchema, paperDraftSchema, paperRecordSchema } from './papers/records.ts';
import { quoteAnswerSchema, quoteDraftSchema, quoteSchema, quoteSendSchema } from './quote.ts';
import { eventDaySchema } from './event-days.ts';
import { eventSchema, expectedReadingsSchema, personDraftSchema, personSchema, readingBatchAnswerSchema, readingBatchSchema, sessionReadingsAnswerSchema, sessionReadingsSchema, workChangeSchema, workItemDraftSchema, workItemSchema } from './records.ts';
import { personExportSchema } from './shop/person-export.ts';
import { roomDraftSchema, roomRecordSchema } from './room/record.ts';
import { stockBookSchema, stockBooks, stockChoices, taxPeriods } from './shop/stock-book.ts';
import { shopCardChangeSchema, shopCardDraftSchema, shopCardSchema } from './shop/records.ts';

/** One door of the HTTP API: the server mounts it, the web client calls it, the OpenAPI page describes it. */
export interface Route {
  readonly method: 'GET' | 'POST' | 'PATCH' | 'PUT' | 'DELETE';
  readonly path: string;
  readonly query?: z.ZodType;
  readonly body?: z.ZodType;
  readonly answer: z.ZodType;
}

const summary = z.strictObject({
  instrument: instrumentSchema,
  lastEventAt: z.string().nullable(),
  /** Standing readings of the current cycle by state. */
  readingCounts: z.strictObject({ found: z.number().int(), planned: z.number().int(), finished: z.number().int() }),
});

const file = z.strictObject({
  instrument: instrumentSchema,
  sessions: z.array(sessionSchema),
  /** Touch intents by cycle. */
  intents: z.record(z.string(), touchIntentSchema),
  /** Terms of strings and bearing by cycle. */
  scales: z.record(z.string(), scaleTermsSchema),
  /** Terms of the action by cycle. */
  actions: z.record(z.string(), actionTermsSchema),
  /** Terms of the tuning by cycle. */
  tunings: z.record(z.string(), tuningTermsSchema),
  /** Passes over the strings, in the order they were noted. */
  passes: z.array(tuningPassSchema),
  observations: z.array(observationSchema),
  work: z.array(workItemSchema),
  /** What a job is reckoned to take and cost, by cycle. */
  estimates: z.record(z.string(), estimateSchema),
  quotes: z.array(quoteSchema),
  /** Rooms it stands in or may stand in, choices beside each other. */
  rooms: z.array(roomRecordSchema),
  /** What papers hang on: materials and what is proven of the history, in every stay alike. */
  papers: z.array(paperRecordSchema),
  /** Air read by hand, files of loggers, the plan of care and moves, in the order they were noted. */
  care: z.array(careCardSchema),
  head: z.strictObject({ seq: z.number().int(), hash: z.string() }),
});

const benchPianoSchema = z.strictObject({
  instrument: instrumentSchema,
  /** Jobs of the current stay, to do and done of late. */
  work: z.array(workItemSchema),
  estimate: estimateSchema.nullable(),
});
/** A piano with work at the bench. */
export type BenchPiano = z.output<typeof benchPianoSchema>;

const importSource = z.strictObject({
  fileName: z.string().max(255),
  contentBase64: z.string(),
  /** Sheet of a workbook; left out: the first. */
  sheet: z.string().max(255).optional(),
  /** Column header or letter → what it holds (`key`, `note`, `remark`, a quantity name such as `downWeightG` or `downWeightG#2`), or null to leave the column out. What is not named is guessed. */
  mapping: z.record(z.string(), z.string().nullable()).optional(),
  cycle: z.number().int().min(1),
  state: z.enum(['found', 'planned', 'finished']),
  sessionId: z.string().nullable().default(null),
  locale: z.string().max(35).optional(),
});
export type ImportSource = z.input<typeof importSource>;

const importRow = z.strictObject({
  /** Row of the file as a spreadsheet counts it, from 1. */
  row: z.number().int(),
  key: z.number().int().nullable(),
  cells: z.array(z.string()),
  outcome: z.enum(['create', 'update', 'same', 'refused', 'empty']),
  problems: z.array(z.string()),
});
const importPreview = z.strictObject({
  encoding: z.string(),
  /** Sign between the columns; empty for a workbook. */
  delimiter: z.string(),
  /** The sheet that was read, and all there are; null and none for a text file. */
  sheet: z.string().nullable(),
  sheets: z.array(z.string()),
  /** What is wrong with the file as a whole; while anything stands here, nothing of it would be written. */
  problems: z.array(z.string()),
  /** `reason`: why a column is left out. */
  columns: z.array(z.strictObject({ letter: z.string(), header: z.string(), mapsTo: z.string().nullable(), reason: z.string().nullable() })),
  counts: z.strictObject({ create: z.number(), update: z.number(), same: z.number(), refused: z.number(), empty: z.number() }),
  /** The first ten rows, and every refused one. */
  rows: z.array(importRow),
});
export type ImportPreview = z.output<typeof importPreview>;
export type ImportRow = z.output<typeof importRow>;

/** Header in which a writing request names the person at the bench, by the reference `POST /api/people` answered; without it nobody is named. */
export const PERSON_HEADER = 'wrestplank-person';

/** Every JSON route of the API. Calculations, files (`export`, `proof.pdf`) and the description pages are mounted beside it. */
export const routes = {
  /** `limit`: so many at the most, the one written at last first; `words`: those whose name holds them. `total` counts all that fit. */
  listPianos: { method: 'GET', path: '/api/pianos', query: z.object({ limit: z.string().optional(), words: z.string().max(200).optional() }), answer: z.strictObject({ pianos: z.array(summary), total: z.number().int(), demo: z.boolean() }) },
  listPianoNames: { method: 'GET', path: '/api/piano-names', answer: z.strictObject({ pianos: z.array(z.strictObject({ id: z.string(), name: z.string() })) }) },
  addPiano: { method: 'POST', path: '/api/pianos', body: instrumentDraftSchema, answer: instrumentSchema },
  getPiano: { method: 'GET', path: '/api/pianos/:id', answer: file },
  changePiano: { method: 'PATCH', path: '/api/pianos/:id', body: changeOf(instrumentDraftSchema.shape), answer: instrumentSchema },
  openCycle: { method: 'POST', path: '/api/pianos/:id/cycles', answer: instrumentSchema },
  addSession: { method: 'POST', path: '/api/pianos/:id/sessions', body: sessionDraftSchema, answer: sessionSchema },
  changeSession: { method: 'PATCH', path: '/api/pianos/:id/sessions/:sid', body: changeOf(sessionDraftSchema.shape), answer: sessionSchema },
  /** Puts standing readings that belong to no session into this one: one event, undone as one step. */
  assignReadings: { method: 'POST', path: '/api/pianos/:id/sessions/:sid/readings', body: sessionReadingsSchema, answer: sessionReadingsAnswerSchema },
  listReadings: { method: 'GET', path: '/api/pianos/:id/readings', query: z.object({ cycle: z.string().optional() }), answer: z.strictObject({ readings: z.array(readingSchema) }) },
  /** Every reading ever kept at one place, newest first, the superseded and withdrawn ones too. */
  readingHistory: {
    method: 'GET', path: '/api/pianos/:id/history',
    query: z.object({ cycle: z.string(), state: z.string(), quantity: z.string(), index: z.string() }),
    answer: z.strictObject({ readings: z.array(z.strictObject({ ...readingSchema.shape, standing: z.boolean(), withdrawn: z.boolean() })) }),
  },
  writeReadings: { method: 'POST', path: '/api/pianos/:id/readings', body: readingBatchSchema, answer: readingBatchAnswerSchema },
  setIntent: { method: 'PUT', path: '/api/pianos/:id/intents/:cycle', body: touchIntentSchema, answer: touchIntentSchema },
  setScale: { method: 'PUT', path: '/api/pianos/:id/scales/:cycle', body: scaleTermsSchema, answer: scaleTermsSchema },
  setAction: { method: 'PUT', path: '/api/pianos/:id/actions/:cycle', body: actionTermsSchema, answer: actionTermsSchema },
  setTuning: { method: 'PUT', path: '/api/pianos/:id/tunings/:cycle', body: tuningTermsSchema, answer: tuningTermsSchema },
  addPass: { method: 'POST', path: '/api/pianos/:id/passes', body: tuningPassDraftSchema, answer: tuningPassSchema },
  changePass: { method: 'PATCH', path: '/api/pianos/:id/passes/:pid', body: changeOf(tuningPassDraftSchema.shape), answer: tuningPassSchema },
  withdrawPass: { method: 'DELETE', path: '/api/pianos/:id/passes/:pid', answer: tuningPassSchema },
  /** Passes of every piano of the workshop this one belongs to: what it learns from. */
  listShopPasses: { method: 'GET', path: '/api/pianos/:id/shop-passes', answer: z.strictObject({ passes: z.array(z.strictObject({ ...tuningPassSchema.shape, pianoId: z.string() })) }) },
  addObservation: { method: 'POST', path: '/api/pianos/:id/observations', body: observationDraftSchema, answer: observationSchema },
  changeObservation: { method: 'PATCH', path: '/api/pianos/:id/observations/:oid', body: changeOf(observationDraftSchema.shape), answer: observationSchema },
  withdrawObservation: { method: 'DELETE', path: '/api/pianos/:id/observations/:oid', answer: observationSchema },
  listRecordings: { method: 'GET', path: '/api/pianos/:id/recordings', answer: z.strictObject({ recordings: z.array(recordingSchema) }) },
  /** Tells of a sound file kept by `POST /api/recordings`, and puts it in line to be worked out. */
  addRecording: { method: 'POST', path: '/api/pianos/:id/recordings', body: recordingDraftSchema, answer: recordingSchema },
  changeRecording: { method: 'PATCH', path: '/api/pianos/:id/recordings/:rid', body: changeOf(recordingDraftSchema.omit({ file: true }).shape), answer: recordingSchema },
  withdrawRecording: { method: 'DELETE', path: '/api/pianos/:id/recordings/:rid', answer: recordingSchema },
  listAnalyses: { method: 'GET', path: '/api/pianos/:id/analyses', answer: z.strictObject({ analyses: z.array(analysisSchema) }) },
  analyseRecordings: { method: 'POST', path: '/api/pianos/:id/analyses', body: z.strictObject({ recordings: z.array(z.string()).min(1).max(1000), again: z.boolean().default(false) }), answer: z.strictObject({ jobs: z.array(jobSchema) }) },
  listJobs: { method: 'GET', path: '/api/pianos/:id/jobs', answer: z.strictObject({ jobs: z.array(jobSchema) }) },
  cancelJob: { method: 'DELETE', path: '/api/pianos/:id/jobs/:jid', answer: jobSchema },
  /** The log, the newest first: of a stretch of it, of one kind of change, about one card, or with words in it. */
  listEvents: {
    method: 'GET', path: '/api/pianos/:id/events',
    query: z.object({ before: z.string().optional(), since: z.string().optional(), limit: z.string().optional(), what: z.string().optional(), about: z.string().optional(), words: z.string().optional(), locale: z.string().optional() }),
    answer: z.strictObject({ events: z.array(eventSchema) }),
  },
  /** The days of the log by stay, each with how many events changed what. */
  listEventDays: { method: 'GET', path: '/api/pianos/:id/event-days', query: z.object({ zone: z.string().optional() }), answer: z.strictObject({ days: z.array(eventDaySchema) }) },
  undo: { method: 'POST', path: '/api/pianos/:id/undo', body: z.strictObject({ seq: z.number().int().min(1) }), answer: eventSchema },
  audit: { method: 'GET', path: '/api/pianos/:id/audit', answer: z.strictObject({ whole: z.boolean(), events: z.number().int(), firstBrokenSeq: z.number().int().nullable(), headHash: z.string() }) },
  addWork: { method: 'POST', path: '/api/pianos/:id/work', body: z.strictObject({ items: z.array(workItemDraftSchema).min(1).max(1000), expected: expectedReadingsSchema.optional() }), answer: z.strictObject({ work: z.array(workItemSchema) }) },
  changeWork: { method: 'PATCH', path: '/api/pianos/:id/work/:wid', body: workChangeSchema, answer: workItemSchema },
  /** Moves several jobs together, as one step. */
  changeJobs: { method: 'PATCH', path: '/api/pianos/:id/work', body: z.strictObject({ items: z.array(z.string()).min(1).max(1000), change: workChangeSchema }), answer: z.strictObject({ work: z.array(workItemSchema) }) },
  setEstimate: { method: 'PUT', path: '/api/pianos/:id/estimates/:cycle', body: estimateSchema, answer: estimateSchema },
  /** Estimates of every piano of the workshop this one belongs to: what it learns hours from. */
  listShopEstimates: { method: 'GET', path: '/api/pianos/:id/shop-estimates', answer: z.strictObject({ estimates: z.array(z.strictObject({ pianoId: z.string(), cycle: z.number().int(), estimate: estimateSchema })) }) },
  addQuote: { method: 'POST', path: '/api/pianos/:id/quotes', body: quoteDraftSchema, answer: quoteSchema },
  changeQuote: { method: 'PATCH', path: '/api/pianos/:id/quotes/:qid', body: changeOf(quoteDraftSchema.omit({ cycle: true, replaces: true }).shape), answer: quoteSchema },
  withdrawQuote: { method: 'DELETE', path: '/api/pianos/:id/quotes/:qid', answer: quoteSchema },
  /** Marks a quote as sent. It cannot be undone: somebody has it. */
  sendQuote: { method: 'POST', path: '/api/pianos/:id/quotes/:qid/sending', body: quoteSendSchema, answer: quoteSchema },
  /** Notes what the customer said: taken whole or by line, declined, or lapsed. It cannot be undone. */
  answerQuote: { method: 'POST', path: '/api/pianos/:id/quotes/:qid/answer', body: quoteAnswerSchema, answer: quoteSchema },
  addRoom: { method: 'POST', path: '/api/pianos/:id/rooms', body: roomDraftSchema, answer: roomRecordSchema },
  changeRoom: { method: 'PATCH', path: '/api/pianos/:id/rooms/:oid', body: changeOf(roomDraftSchema.shape), answer: roomRecordSchema },
  withdrawRoom: { method: 'DELETE', path: '/api/pianos/:id/rooms/:oid', answer: roomRecordSchema },
  addPaper: { method: 'POST', path: '/api/pianos/:id/papers', body: paperDraftSchema, answer: paperRecordSchema },
  changePaper: { method: 'PATCH', path: '/api/pianos/:id/papers/:rid', body: paperChangeSchema, answer: paperRecordSchema },
  withdrawPaper: { method: 'DELETE', path: '/api/pianos/:id/papers/:rid', answer: paperRecordSchema },
  addCare: { method: 'POST', path: '/api/pianos/:id/care', body: careDraftSchema, answer: careCardSchema },
  changeCare: { method: 'PATCH', path: '/api/pianos/:id/care/:kid', body: careChangeSchema, answer: careCardSchema },
  withdrawCare: { method: 'DELETE', path: '/api/pianos/:id/care/:kid', answer: careCardSchema },
  /** Shows how the file of a climate logger would be read, what has to be told, and every row that cannot be read. */
  previewLogger: { method: 'POST', path: '/api/pianos/:id/loggers/preview', body: loggerSourceSchema, answer: loggerPreviewSchema },
  /** Keeps the file of a climate logger whole; one that is in the log already is refused. */
  addLogger: { method: 'POST', path: '/api/pianos/:id/loggers', body: loggerSourceSchema, answer: careCardSchema },
  /** The log of the air, of all loggers and hands, brought to the mean of each hour. */
  getClimate: { method: 'GET', path: '/api/pianos/:id/climate', answer: airHoursSchema },
  previewImport: { method: 'POST', path: '/api/pianos/:id/import/preview', body: importSource, answer: importPreview },
  runImport: { method: 'POST', path: '/api/pianos/:id/import', body: importSource, answer: z.strictObject({ seq: z.number().int().nullable(), counts: importPreview.shape.counts }) },
  listPeople: { method: 'GET', path: '/api/people', answer: z.strictObject({ people: z.array(personSchema) }) },
  addPerson: { method: 'POST', path: '/api/people', body: personDraftSchema, answer: personSchema },
  namePerson: { method: 'PUT', path: '/api/people/:reference', body: personDraftSchema, answer: personSchema },
  /** Forgets a name. What the person wrote stays, with its reference alone. */
  forgetPerson: { method: 'DELETE', path: '/api/people/:reference', answer: personSchema },
  /** What of the shop is not of one piano: all of it, or cards of some kinds, of one piano, of one person, or those still open. */
  getShop: { method: 'GET', path: '/api/shop', query: z.object({ kinds: z.string().optional(), piano: z.string().optional(), person: z.string().optional(), open: z.string().optional() }), answer: z.strictObject({ cards: z.array(shopCardSchema) }) },
  addShopCard: { method: 'POST', path: '/api/shop/cards', body: shopCardDraftSchema, answer: shopCardSchema },
  changeShopCard: { method: 'PATCH', path: '/api/shop/cards/:cid', body: shopCardChangeSchema, answer: shopCardSchema },
  withdrawShopCard: { method: 'DELETE', path: '/api/shop/cards/:cid', answer: shopCardSchema },
  /** Pianos with jobs to do or done of late, with their jobs and the estimate of their stay. */
  getBench: { method: 'GET', path: '/api/bench', answer: z.strictObject({ pianos: z.array(benchPianoSchema) }) },
  /** Notes that an order has come and puts its lines into stock, as one step. */
  receivePurchase: { method: 'POST', path: '/api/shop/purchases/:cid/receipt', body: z.strictObject({ on: daySchema }), answer: shopCardSchema },
  /** Pianos bought to be sold again. Left out, `book` is the shop's own, or the demonstration's where that alone has any. */
  getStockBook: { method: 'GET', path: '/api/shop/stock-book', query: z.object({ year: z.string().regex(/^[1-9]\d{3}$/u, 'a year such as 2031').optional(), which: z.enum(stockChoices).optional(), period: z.enum(taxPeriods).optional(), book: z.enum(stockBooks).optional() }), answer: stockBookSchema },
  exportPerson: { method: 'GET', path: '/api/shop/people/:cid/export', answer: personExportSchema },
  /** Forgets a person of the shop; refused while something is open with them. */
  erasePerson: { method: 'DELETE', path: '/api/shop/people/:cid', answer: shopCardSchema },
  addDemo: { method: 'POST', path: '/api/demo', answer: z.strictObject({ pianos: z.array(instrumentSchema) }) },
  removeDemo: { method: 'DELETE', path: '/api/demo', answer: z.strictObject({ removed: z.number().int() }) },
  health: { method: 'GET', path: '/api/health', answer: z.strictObject({ status: z.literal('ok'), version: z.string(), store: z.enum(['embedded', 'server']), demo: z.boolean() }) },
} as const satisfies Readonly<Record<string, Route>>;

export type Routes = typeof routes;
export type RouteName = keyof Routes;
/** What a route answers. */
export type Answer<N extends RouteName> = z.output<Routes[N]['answer']>;
/** What a route takes as its body. */
export type Body<N extends RouteName> = Routes[N] extends { readonly body: infer B extends z.ZodType } ? z.input<B> : undefined;
/** What a route takes in its query string. */
export type Query<N extends RouteName> = Routes[N] extends { readonly query: infer Q extends z.ZodType } ? z.input<Q> : undefined;
