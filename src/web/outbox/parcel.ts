import type { State } from '#instrument';
import { type ReadingBatchAnswer, type ReadingEntry, placeText } from '#workshop';
import type { ProblemEntry } from '#result';

/** What all entries of one parcel have in common. */
export interface Envelope {
  readonly cycle: number;
  readonly state: State;
  readonly sessionId: string | null;
  readonly locale?: string;
}

/** An entry on its way. `after` names the parcel still waiting whose figure at the same place this one corrects. */
export interface ParcelEntry extends ReadingEntry {
  readonly after?: string;
}

/** `held`: waits for the answer how it was weighed; `waiting`: not yet acknowledged; `conflict`: another figure stands there now; `refused`: the server will not have it. */
export type ParcelStatus = 'held' | 'waiting' | 'sending' | 'conflict' | 'refused';

/** Why a parcel stays: the server's words. */
export interface ParcelProblem {
  readonly status: number;
  readonly message: string;
  readonly errors: readonly ProblemEntry[];
}

/** One step of the person at the bench: a figure, or a pasted block. Sent and undone as a whole. */
export interface Parcel extends Envelope {
  /** Acknowledged once by the server, however often it is sent. */
  readonly sendId: string;
  readonly pianoId: string;
  /** Who typed it; null or left out: nobody was named. */
  readonly by?: string | null;
  readonly entries: readonly ParcelEntry[];
  readonly status: ParcelStatus;
  /** Moment it was typed, and its place in the order of that moment. */
  readonly typedAt: number;
  readonly order: number;
  readonly problem?: ParcelProblem;
}

/** A reading's place in its instrument, as the log names it: `c1/found/downWeightG/key/40/1`. */
export type PlaceKey = string;

export function placeKeyOf({ cycle, state }: Pick<Envelope, 'cycle' | 'state'>, { quantity, scope, index, repeat = 1 }: Pick<ReadingEntry, 'quantity' | 'scope' | 'index' | 'repeat'>): PlaceKey {
  return placeText({ cycle, state, quantity, scope, index, repeat });
}

export function placesOf(parcel: Parcel): readonly PlaceKey[] {
  return parcel.entries.map((entry) => placeKeyOf(parcel, entry));
}

/** The ids the acknowledged parcel left at its places; null where it cleared. */
export function idsAfter(parcel: Parcel, answer: ReadingBatchAnswer): ReadonlyMap<PlaceKey, string | null> {
  const ids = new Map<PlaceKey, string | null>(placesOf(parcel).map((place) => [place, null]));
  for (const reading of answer.readings) ids.set(placeKeyOf(reading, reading), reading.id);
  return ids;
}

export function inOrder(a: Parcel, b: Parcel): number {
  return a.typedAt - b.typedAt || a.order - b.order;
}

/** The parcels of one state of a piano that wait for the answer how they were weighed. */
export function heldAt(parcels: readonly Parcel[], { pianoId, cycle, state }: Pick<Parcel, 'pianoId' | 'cycle' | 'state'>): readonly Parcel[] {
  return parcels.filter((parcel) => parcel.status === 'held' && parcel.pianoId === pianoId && parcel.cycle === cycle && parcel.state === state);
}

/** How many figures parcels hold. */
export function figuresIn(parcels: readonly Parcel[]): number {
  return parcels.reduce((count, { entries }) => count + entries.length, 0);
}
