import { type Reading, type State, states, understandFigure } from '#instrument';
import { type Parcel, type ParcelEntry, type PlaceKey, placeKeyOf } from '../outbox/parcel.ts';

/** The readings of one cycle by place, one map a state; a map keeps its identity while nothing of its state changes. */
export type ReadingBook = Readonly<Record<State, ReadonlyMap<PlaceKey, Reading>>>;

const emptyBook: ReadingBook = { found: new Map(), planned: new Map(), finished: new Map() };

interface Kept {
  readonly readings: readonly Reading[] | undefined;
  readonly parcels: readonly Parcel[];
  readonly book: ReadingBook;
}
const kept = new Map<string, Kept>();
const provisional = new WeakMap<ParcelEntry, Reading>();
const indexed = new WeakMap<readonly Reading[], ReadonlyMap<PlaceKey, Reading>>();

/** Readings by place, worked out once for each list the server gave. */
export function byPlace(readings: readonly Reading[]): ReadonlyMap<PlaceKey, Reading> {
  const known = indexed.get(readings);
  if (known !== undefined) return known;
  const made = new Map(readings.map((reading) => [placeKeyOf(reading, reading), reading]));
  indexed.set(readings, made);
  return made;
}

/** What the server keeps, with what is still on its way laid over it: the screen shows what was typed at once. */
export function bookOf(pianoId: string, cycle: number, readings: readonly Reading[] | undefined, parcels: readonly Parcel[]): ReadingBook {
  const key = `${pianoId} ${String(cycle)}`;
  const before = kept.get(key);
  if (before !== undefined && before.readings === readings && before.parcels === parcels) return before.book;
  const all = new Map(readings === undefined ? [] : byPlace(readings));
  for (const parcel of parcels) {
    if (parcel.pianoId === pianoId && parcel.cycle === cycle) layOver(all, parcel);
  }
  const fresh: Record<State, Map<PlaceKey, Reading>> = { found: new Map(), planned: new Map(), finished: new Map() };
  for (const [place, reading] of all) fresh[reading.state].set(place, reading);
  const old = before?.book ?? emptyBook;
  const [found, planned, finished] = states.map((state) => (sameMap(old[state], fresh[state]) ? old[state] : fresh[state]));
  const book: ReadingBook = { found: found ?? fresh.found, planned: planned ?? fresh.planned, finished: finished ?? fresh.finished };
  kept.set(key, { readings, parcels, book });
  return book;
}

function layOver(all: Map<PlaceKey, Reading>, parcel: Parcel): void {
  if (parcel.status === 'refused') return;
  for (const entry of parcel.entries) {
    const place = placeKeyOf(parcel, entry);
    if (entry.clear === true) all.delete(place);
    else all.set(place, provisionalOf(parcel, entry));
  }
}

/** A reading as it will stand once acknowledged; its id says that it has none yet. */
function provisionalOf(parcel: Parcel, entry: ParcelEntry): Reading {
  const known = provisional.get(entry);
  if (known !== undefined) return known;
  const { quantity, scope, index, repeat = 1, typed, outcome, remark = '', basis = 'measured' } = entry;
  const understood = typed === undefined ? undefined : understandFigure(quantity, typed, { path: '', ...(parcel.locale === undefined ? {} : { locale: parcel.locale }) });
  const reading = {
    id: `on-its-way ${parcel.sendId}`,
    cycle: parcel.cycle,
    state: parcel.state,
    quantity: quantity as Reading['quantity'],
    scope, index, repeat, remark, basis,
    typed: typed ?? null,
    value: understood?.ok === true ? understood.value.value : null,
    outcome: outcome ?? null,
    uncertainty: null,
    sessionId: parcel.sessionId,
    at: new Date(parcel.typedAt).toISOString(),
    by: parcel.by ?? '',
  } satisfies Reading;
  provisional.set(entry, reading);
  return reading;
}

function sameMap(a: ReadonlyMap<PlaceKey, Reading>, b: ReadonlyMap<PlaceKey, Reading>): boolean {
  if (a.size !== b.size) return false;
  for (const [place, reading] of b) if (a.get(place) !== reading) return false;
  return true;
}
