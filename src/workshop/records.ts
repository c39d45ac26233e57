import { readingSchema } from '#instrument';
import { z } from 'zod';

/** One job for the bench, usually from a finding. Done items ask for the re-measurement named in `remeasure`. */
export const workItemDraftSchema = z.strictObject({
  cycle: z.number().int().min(1),
  /** Key number, or null for the whole instrument. */
  key: z.number().int().min(1).nullable(),
  /** Remedy of the catalogue (`remedy.<name>`), or `other` with the words in `remark`. */
  remedy: z.string().min(1).max(60),
  /** The finding it came from (`cause.<name>`), if any. */
  cause: z.string().max(60).nullable().default(null),
  /** What was seen that it came from, by its id, if anything. */
  observation: z.string().max(60).nullable().default(null),
  remark: z.string().max(2000).default(''),
  /** Quantities to weigh again once done. */
  remeasure: z.array(z.string()).max(8).default([]),
  /** Place in the order of work: friction 1, ratio 2, hammer 3, lead 4, other 5. */
  stage: z.number().int().min(1).max(5),
});
export type WorkItemDraft = z.input<typeof workItemDraftSchema>;

/** What a job may wait for. */
export const waitReasons = ['parts', 'glue', 'settling', 'other'] as const;

/** What a job waits for: a moment that is to pass, or an order that is to come; neither stated, until somebody says otherwise. */
export const workWaitSchema = z.strictObject({
  for: z.enum(waitReasons),
  until: z.iso.datetime({ offset: true }).nullable().default(null),
  /** Order of the shop's book, by its id. */
  purchase: z.string().min(1).max(60).nullable().default(null),
});
export type WorkWait = z.output<typeof workWaitSchema>;

/** A job as it is kept. */
export const workItemSchema = z.strictObject({
  ...workItemDraftSchema.shape,
  id: z.string(),
  /** Somebody is at it. */
  inHand: z.boolean().default(false),
  waits: workWaitSchema.nullable().default(null),
  status: z.enum(['open', 'done', 'dropped']),
  doneAt: z.string().nullable(),
});
export type WorkItem = z.output<typeof workItemSchema>;

/** What may be changed of jobs; a change of several is one step. */
export const workChangeSchema = z.strictObject({
  status: workItemSchema.shape.status.optional(),
  remark: z.string().max(2000).optional(),
  inHand: z.boolean().optional(),
  waits: workWaitSchema.nullable().optional(),
});
export type WorkChange = z.input<typeof workChangeSchema>;

/** A person behind a reference of the log: the name stands outside every event, so that it can be forgotten. */
export const personSchema = z.strictObject({ reference: z.string(), name: z.string() });
export type Person = z.output<typeof personSchema>;

/** A person as named at the bench. */
export const personDraftSchema = z.strictObject({ name: z.string().trim().min(1).max(80).regex(/^\P{Cc}*$/u, 'no control characters') });
export type PersonDraft = z.input<typeof personDraftSchema>;

/** What a change touched: a card of some kind by its id, or a reading's place. */
export const changeSchema = z.strictObject({
  entity: z.enum(['instrument', 'session', 'intent', 'scale', 'action', 'tuning', 'pass', 'observation', 'recording', 'work', 'estimate', 'quote', 'room', 'paper', 'care', 'shop', 'reading']),
  /** The card's id, or for a reading its place: `c1/found/downWeightG/key/40/1`. */
  place: z.string(),
  before: z.unknown(),
  after: z.unknown(),
});
export type Change = z.output<typeof changeSchema>;

/** What events there are. An undo is an event too: it names in `undoes` what it takes back. */
export const eventKinds = [
  'piano.added', 'piano.changed', 'cycle.opened', 'session.added', 'session.changed', 'readings.written', 'readings.assigned',
  'intent.set', 'scale.set', 'action.set', 'tuning.set', 'pass.added', 'pass.changed', 'pass.withdrawn', 'observation.added', 'observation.changed', 'observation.withdrawn', 'recording.added', 'recording.changed', 'recording.withdrawn', 'work.added', 'work.changed',
  'room.added', 'room.changed', 'room.withdrawn', 'shop.added', 'shop.changed', 'shop.withdrawn', 'purchase.received', 'person.erased', 'estimate.set', 'quote.added', 'quote.changed', 'quote.withdrawn', 'quote.sent', 'quote.answered', 'paper.added', 'paper.changed', 'paper.withdrawn', 'care.added', 'care.changed', 'care.withdrawn', 'undone',
] as const;
/** Events that told somebody outside the shop something: they stand, and nothing takes them back. */
export const finalKinds: readonly string[] = ['quote.sent', 'quote.answered', 'person.erased'];
export type EventKind = (typeof eventKinds)[number];

/** One entry of the append-only log. `text` is the stored canonical form that `hash` was taken of. */
export const eventSchema = z.strictObject({
  seq: z.number().int().min(1),
  at: z.string(),
  by: z.string(),
  kind: z.string(),
  /** Sequence number of the event this one undoes. */
  undoes: z.number().int().nullable(),
  /** Sequence number of the event that undid this one. */
  undoneBy: z.number().int().nullable(),
  changes: z.array(changeSchema),
  hash: z.string(),
});
export type LogEvent = z.output<typeof eventSchema>;

/** One cell to write: typed text, an outcome, or `clear`. Exactly one of the three. */
export const readingEntrySchema = z.strictObject({
  quantity: z.string(),
  scope: z.enum(['key', 'colour', 'instrument']),
  index: z.number().int().min(0),
  repeat: z.number().int().min(1).default(1),
  typed: z.string().max(200).optional(),
  outcome: z.enum(['sticks', 'noReturn', 'overRange', 'missing', 'unweighable']).optional(),
  clear: z.literal(true).optional(),
  remark: z.string().max(2000).optional(),
  basis: z.enum(['measured', 'estimated', 'derived']).optional(),
  /** The reading the writer saw at this place, null for none; if another stands there now, the write is refused as a conflict. */
  basedOn: z.string().nullable().optional(),
});
export type ReadingEntry = z.input<typeof readingEntrySchema>;

/** A batch of cells, written as one event or not at all. */
export const readingBatchSchema = z.strictObject({
  cycle: z.number().int().min(1),
  state: z.enum(['found', 'planned', 'finished']),
  sessionId: z.string().nullable().default(null),
  locale: z.string().max(35).optional(),
  /** Set by the writer, so that a repeated send is acknowledged and not written twice. */
  sendId: z.string().min(8).max(64).optional(),
  /** When it was typed, by the clock of the device. */
  typedAt: z.iso.datetime().optional(),
  entries: z.array(readingEntrySchema).min(1).max(5000),
});
export type ReadingBatch = z.input<typeof readingBatchSchema>;

/** Readings expected once work is done: planned, and written with the jobs as one event. */
export const expectedReadingsSchema = readingBatchSchema.pick({ cycle: true, locale: true, entries: true });
export type ExpectedReadings = z.input<typeof expectedReadingsSchema>;

/** What a written batch is acknowledged with. */
export const readingBatchAnswerSchema = z.strictObject({
  seq: z.number().int(),
  /** The readings now standing at the places written; a cleared place has none. */
  readings: z.array(readingSchema),
  warnings: z.array(z.strictObject({ code: z.string(), path: z.string(), given: z.unknown(), allowed: z.string(), params: z.record(z.string(), z.union([z.string(), z.number()])).optional() })),
});
export type ReadingBatchAnswer = z.output<typeof readingBatchAnswerSchema>;

/** Standing readings without a session, by id, to be put into one as one event. Their figures and times stay. */
export const sessionReadingsSchema = z.strictObject({ readings: z.array(z.string()).min(1).max(5000) });
export type SessionReadings = z.input<typeof sessionReadingsSchema>;
/** The same readings as they stand in the session. */
export const sessionReadingsAnswerSchema = readingBatchAnswerSchema.omit({ warnings: true });
export type SessionReadingsAnswer = z.output<typeof sessionReadingsAnswerSchema>;
