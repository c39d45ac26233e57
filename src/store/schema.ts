import type { Basis, Outcome, QuantityName, Scope, State } from '#instrument';
import type { AnalysisTask, Job, JobFailure } from '#workshop';
import { sql } from 'drizzle-orm';
import { boolean, doublePrecision, index, integer, jsonb, pgTable, primaryKey, text, timestamp, uniqueIndex } from 'drizzle-orm/pg-core';

// Every table is keyed by workshop first, so that a distributed PostgreSQL can shard on it.

/** The people behind the references in the log: a name can be erased, and no chain breaks. */
export const person = pgTable('person', {
  workshop: text().notNull(),
  reference: text().notNull(),
  name: text().notNull(),
}, (table) => [primaryKey({ columns: [table.workshop, table.reference] })]);

/**
 * What is personal on cards of the shop: names, addresses, free words. It stands outside the log, behind a random reference
 * that the events name, one row for each time it was changed; when a person asks to be forgotten all of theirs go.
 */
export const personal = pgTable('personal', {
  workshop: text().notNull(),
  /** The person it is of; of a card that names nobody, the card itself. */
  person: text().notNull(),
  reference: text().notNull(),
  body: jsonb().$type<Record<string, unknown>>().notNull(),
}, (table) => [primaryKey({ columns: [table.workshop, table.reference] }), index('personal_person').on(table.workshop, table.person)]);

/** The end of each instrument's chain; its row is locked while an event is appended. Seq 0 and an empty hash before the first. */
export const chainHead = pgTable('chain_head', {
  workshop: text().notNull(),
  instrument: text().notNull(),
  seq: integer().notNull(),
  hash: text().notNull(),
  /** When its last event was appended: the list of pianos is in this order. */
  at: timestamp({ withTimezone: true, precision: 3 }),
}, (table) => [primaryKey({ columns: [table.workshop, table.instrument] }), index('chain_head_instrument').on(table.instrument), index('chain_head_latest').on(table.at.desc().nullsLast(), table.instrument)]);

/**
 * The append-only log. `text` is the canonical form that was hashed, and the truth;
 * the columns beside it are for looking up. Only `undone_by` ever changes, and a trigger holds that.
 */
export const event = pgTable('event', {
  workshop: text().notNull(),
  instrument: text().notNull(),
  seq: integer().notNull(),
  at: timestamp({ withTimezone: true, precision: 3 }).notNull(),
  undoes: integer(),
  undoneBy: integer('undone_by'),
  /** Aspects the event changed, and aspects it rests on: what an undo must look out for. */
  touched: text().array().notNull(),
  used: text().array().notNull(),
  text: text().notNull(),
  hash: text().notNull(),
}, (table) => [primaryKey({ columns: [table.workshop, table.instrument, table.seq] })]);

/** Instruments, sessions, intents, recordings and work as they stand now; the log can build them again. */
export const card = pgTable('card', {
  workshop: text().notNull(),
  instrument: text().notNull(),
  entity: text().$type<'instrument' | 'session' | 'intent' | 'scale' | 'action' | 'tuning' | 'pass' | 'observation' | 'recording' | 'work' | 'estimate' | 'quote' | 'room' | 'paper' | 'care' | 'shop'>().notNull(),
  place: text().notNull(),
  body: jsonb().$type<Record<string, unknown>>().notNull(),
  /** False once its making was undone. */
  standing: boolean().notNull(),
  /** Event that made it and its order within, so that lists keep their order. */
  madeSeq: integer('made_seq').notNull(),
  madeIndex: integer('made_index').notNull(),
  /** The last event that made, changed, withdrew or brought it back: what of a card only ever grows. */
  changedSeq: integer('changed_seq').notNull().default(0),
}, (table) => [
  primaryKey({ columns: [table.workshop, table.instrument, table.entity, table.place] }),
  // Cards of every instrument at once: the list of pianos, the book of the shop, the jobs at the bench.
  index('card_entity').on(table.entity, table.place),
  index('card_work_to_do').on(sql`(${table.body}->>'status')`, sql`(${table.body}->>'doneAt')`).where(sql`${table.entity} = 'work' and ${table.standing}`),
]);

/** Every reading ever taken. Rows are only added; which one stands at a place is all that changes. */
export const reading = pgTable('reading', {
  workshop: text().notNull(),
  instrument: text().notNull(),
  id: text().notNull(),
  seq: integer().notNull(),
  place: text().notNull(),
  cycle: integer().notNull(),
  state: text().$type<State>().notNull(),
  quantity: text().$type<QuantityName>().notNull(),
  scope: text().$type<Scope>().notNull(),
  index: integer().notNull(),
  repeat: integer().notNull(),
  typed: text(),
  value: doublePrecision(),
  outcome: text().$type<Outcome>(),
  uncertainty: doublePrecision(),
  basis: text().$type<Basis>().notNull(),
  remark: text().notNull(),
  sessionId: text('session_id'),
  at: timestamp({ withTimezone: true, precision: 3 }).notNull(),
  /** As the device said; null where none did. */
  typedAt: timestamp('typed_at', { withTimezone: true, precision: 3 }),
  by: text().notNull(),
  standing: boolean().notNull(),
  withdrawn: boolean().notNull(),
  supersededBy: text('superseded_by'),
}, (table) => [
  primaryKey({ columns: [table.workshop, table.instrument, table.id] }),
  uniqueIndex('reading_one_stands').on(table.workshop, table.instrument, table.place).where(sql`${table.standing}`),
  index('reading_place').on(table.workshop, table.instrument, table.place),
  // How many readings stand, by state.
  index('reading_count').on(table.instrument, table.cycle, table.state).where(sql`${table.standing}`),
]);

/** Sends already answered: a repeated one gets the same answer and writes nothing. */
export const send = pgTable('send', {
  workshop: text().notNull(),
  instrument: text().notNull(),
  sendId: text('send_id').notNull(),
  /** Hash of what was sent, so that another batch under the same name is refused, not swallowed. */
  digest: text().notNull(),
  seq: integer().notNull(),
  answer: jsonb().notNull(),
}, (table) => [primaryKey({ columns: [table.workshop, table.instrument, table.sendId] })]);

/** What was worked out of sounds, by the version of the method. Derived: it may be thrown away and worked out again, and is no part of any chain. */
export const analysis = pgTable('analysis', {
  workshop: text().notNull(),
  hash: text().notNull(),
  method: text().$type<AnalysisTask['method']>().notNull(),
  version: text().notNull(),
  /** Canonical JSON of what the method was told beside the sound. */
  input: text().notNull(),
  answer: jsonb().$type<unknown>().notNull(),
  madeAt: timestamp('made_at', { withTimezone: true, precision: 3 }).notNull(),
}, (table) => [primaryKey({ columns: [table.workshop, table.hash, table.method, table.version, table.input] })]);

/** Work in the background: a line that workers of any process take from, each job leased to one of them at a time. */
export const job = pgTable('job', {
  workshop: text().notNull(),
  instrument: text().notNull(),
  id: text().notNull(),
  recordingId: text('recording_id').notNull(),
  task: jsonb().$type<AnalysisTask>().notNull(),
  /** Canonical JSON of the task, so that the same work stands in line once. */
  work: text().notNull(),
  status: text().$type<Job['status']>().notNull(),
  attempts: integer().notNull(),
  progress: doublePrecision().notNull(),
  failure: jsonb().$type<JobFailure>(),
  worker: text(),
  /** By the clock of the database, the one clock all workers share. */
  leasedUntil: timestamp('leased_until', { withTimezone: true, precision: 3 }),
  askedAt: timestamp('asked_at', { withTimezone: true, precision: 6 }).notNull().default(sql`clock_timestamp()`),
}, (table) => [
  primaryKey({ columns: [table.workshop, table.id] }),
  uniqueIndex('job_once_in_line').on(table.workshop, table.work).where(sql`${table.status} in ('waiting', 'running')`),
  index('job_line').on(table.status, table.askedAt),
]);
