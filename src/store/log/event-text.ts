import { createHash } from 'node:crypto';
import { type Change, type EventKind, type LogEvent, canonicalJson } from '#workshop';

/** What an event's stored text says. `prev` is the hash of the event before it, empty for the first. */
export interface EventRecord {
  readonly v: 1;
  readonly workshop: string;
  readonly instrument: string;
  readonly seq: number;
  readonly prev: string;
  readonly at: string;
  readonly by: string;
  readonly kind: EventKind;
  readonly undoes: number | null;
  readonly changes: readonly Change[];
}

/** The text an event is stored and hashed as. It is written once; whoever reads the log reads this very text. */
export function textOf(record: EventRecord): string {
  return canonicalJson(record);
}

/** Reads a stored text back. */
export function readText(text: string): EventRecord {
  return JSON.parse(text) as EventRecord;
}

/** SHA-256 of a stored text, in hexadecimal. */
export function hashOf(text: string): string {
  return createHash('sha256').update(text, 'utf8').digest('hex');
}

/** An event as the log shows it, from its stored text and what stands beside it. */
export function eventOf(row: { readonly text: string; readonly hash: string; readonly undoneBy: number | null }): LogEvent {
  const { seq, at, by, kind, undoes, changes } = readText(row.text);
  return { seq, at, by, kind, undoes, undoneBy: row.undoneBy, changes: [...changes], hash: row.hash };
}
