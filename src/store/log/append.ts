import type { Change, EventKind, LogEvent } from '#workshop';
import type { Transaction } from '../database.ts';
import { event } from '../schema.ts';
import { type Chain, moveHead } from './chain.ts';
import { eventOf, hashOf, textOf } from './event-text.ts';

/** What is to be written as one event. */
export interface Entry {
  readonly kind: EventKind;
  readonly by: string;
  readonly at: Date;
  readonly changes: readonly Change[];
  /** Aspects changed and rested on: see `aspects.ts`. */
  readonly touched: readonly string[];
  readonly used: readonly string[];
  readonly undoes?: number;
}

/** Appends an event to a chain whose head is held. */
export async function append(tx: Transaction, chain: Chain, entry: Entry): Promise<LogEvent> {
  const { workshop, instrument } = chain;
  const { kind, by, at, changes, touched, used } = entry;
  const seq = chain.seq + 1;
  const undoes = entry.undoes ?? null;
  const text = textOf({ v: 1, workshop, instrument, seq, prev: chain.hash, at: at.toISOString(), by, kind, undoes, changes });
  const hash = hashOf(text);
  await tx.insert(event).values({ workshop, instrument, seq, at, undoes, undoneBy: null, touched: [...touched], used: [...used], text, hash });
  await moveHead(tx, chain, { seq, hash, at });
  return eventOf({ text, hash, undoneBy: null });
}
