import { roundings } from '#money';
import type { Issue } from '#result';
import { z } from 'zod';
import { taxRegimes } from './estimate.ts';

const day = z.iso.date();
const id = z.string().min(1).max(64);

/** What is said when a quote is drawn up from an estimate; lines and prices are taken from the estimate as it stands. */
export const quoteDraftSchema = z.strictObject({
  cycle: z.number().int().min(1),
  /** The way of the estimate that is quoted. */
  alternative: z.string().min(1).max(40),
  /** Opaque reference of the customer; names stand outside the log. */
  customer: id.nullable().default(null),
  validUntil: day.nullable().default(null),
  /** Deposit and stages by share of the total; they sum to it exactly. */
  stages: z.array(z.strictObject({ words: z.string().trim().min(1).max(120), share: z.number().gt(0).max(1_000_000) })).max(12).default([]),
  notIncluded: z.array(z.string().trim().min(1).max(300)).max(40).default([]),
  remark: z.string().max(2000).default(''),
  /** The quote this one is a new version of. */
  replaces: id.nullable().default(null),
});
export type QuoteDraft = z.input<typeof quoteDraftSchema>;

/** States of a quote: an accepted one is taken whole or by line. */
export const quoteStates = ['draft', 'sent', 'accepted', 'declined', 'lapsed'] as const;
export type QuoteState = (typeof quoteStates)[number];

/** A quote as it is kept: what it offers is a copy, so that a later change of the estimate does not reach it. */
export const quoteSchema = z.strictObject({
  ...quoteDraftSchema.shape,
  id: z.string(),
  version: z.number().int().min(1),
  madeAt: z.string(),
  title: z.string(),
  currency: z.string(),
  rounding: z.enum(roundings),
  tax: z.strictObject({ regime: z.enum(taxRegimes), ratePct: z.number() }),
  /** True where the amounts of the lines hold the tax already. */
  includesTax: z.boolean(),
  lines: z.array(z.strictObject({ id: z.string(), words: z.string(), amountMinor: z.number().int() })),
  state: z.enum(quoteStates),
  sentOn: day.nullable(),
  answeredOn: day.nullable(),
  /** Lines the customer took; null before the answer. */
  acceptedLines: z.array(z.string()).nullable(),
});
export type Quote = z.output<typeof quoteSchema>;

/** The day a quote goes out. */
export const quoteSendSchema = z.strictObject({ on: day });

/** What the customer said, and when. Lines left out: the whole. */
export const quoteAnswerSchema = z.strictObject({ answer: z.enum(['accepted', 'declined', 'lapsed']), on: day, lines: z.array(z.string()).min(1).max(500).optional() });
export type QuoteAnswer = z.input<typeof quoteAnswerSchema>;

/** Why a quote cannot go out on a day. */
export function sendIssues({ state, validUntil, lines }: Quote, on: string): readonly Issue[] {
  if (state !== 'draft') return [stateIssue(state, 'draft')];
  if (lines.length === 0) return [{ code: 'length', path: 'lines', given: 0, allowed: 'at least one line', params: { of: 'array', min: 1 } }];
  return validUntil !== null && validUntil < on ? [{ code: 'order', path: 'validUntil', given: validUntil, allowed: `${on} or later, the day it is sent`, params: { reason: 'validBeforeSent', day: on } }] : [];
}

/** Why an answer cannot be noted: the quote was not sent, dates out of order, lines it does not have. */
export function answerIssues({ state, sentOn, validUntil, lines }: Quote, { answer, on, lines: taken = [] }: QuoteAnswer): readonly Issue[] {
  if (state !== 'sent') return [stateIssue(state, 'sent')];
  const known = new Set(lines.map((line) => line.id));
  const order = (allowed: string, reason: string, at: string): Issue => ({ code: 'order', path: 'on', given: on, allowed, params: { reason, day: at } });
  return [
    ...(sentOn !== null && on < sentOn ? [order(`${sentOn} or later, the day it was sent`, 'answeredBeforeSent', sentOn)] : []),
    ...(answer === 'accepted' && validUntil !== null && on > validUntil ? [order(`${validUntil} or earlier, the last day it holds; else a new version`, 'acceptedTooLate', validUntil)] : []),
    ...(answer === 'lapsed' && validUntil !== null && on <= validUntil ? [order(`after ${validUntil}, the last day it holds`, 'notLapsed', validUntil)] : []),
    ...(answer === 'accepted' ? [] : taken.length > 0 ? [{ code: 'unknown', path: 'lines', given: taken, allowed: 'no lines where it is not accepted' } as const] : []),
    ...taken.flatMap((line, index): readonly Issue[] => (known.has(line) ? [] : [{ code: 'choice', path: `lines[${String(index)}]`, given: line, allowed: `one of ${[...known].join(', ')}`, params: { choices: [...known].join(', ') } }])),
  ];
}

function stateIssue(given: QuoteState, needed: QuoteState): Issue {
  return { code: 'conflict', path: 'state', given, allowed: `a quote that is ${needed}`, params: { reason: `quote.${needed}` } };
}
