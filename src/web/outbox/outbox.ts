import type { ReadingBatchAnswer, ReadingEntry } from '#workshop';
import { ApiProblem } from '../api/problem.ts';
import type { Keep } from './keep.ts';
import { type Envelope, type Parcel, type ParcelEntry, type ParcelStatus, type PlaceKey, figuresIn, heldAt, idsAfter, inOrder, placeKeyOf, placesOf } from './parcel.ts';

/** What the outbox needs of the world around it. */
export interface OutboxWorld {
  readonly keep: Keep;
  readonly send: (parcel: Parcel) => Promise<ReadingBatchAnswer>;
  /** Id of the reading the writer sees at a place, null for none, undefined when it is not known. */
  readonly standing: (pianoId: string, cycle: number, place: PlaceKey) => string | null | undefined;
  readonly acknowledged: (parcel: Parcel, answer: ReadingBatchAnswer) => void;
  readonly newId: () => string;
  /** Who is at the bench. */
  readonly who: () => string | null;
  readonly now: () => number;
  readonly later: (run: () => void, afterMs: number) => void;
}

/** The outbox at a glance. */
export interface OutboxState {
  readonly parcels: readonly Parcel[];
  /** Figures not yet acknowledged, conflicts and refusals not counted. */
  readonly waiting: number;
  readonly sending: boolean;
  /** Figures that wait for the answer how they were weighed. */
  readonly held: number;
  /** Parcels that need a decision. */
  readonly stuck: number;
  /** True when this device keeps nothing: closing the page would lose what waits. */
  readonly unkept: boolean;
  /** True while the server does not answer. */
  readonly unreachable: boolean;
}

const FIRST_PAUSE_MS = 1000;
const LONGEST_PAUSE_MS = 30_000;

/**
 * Keeps every typed figure until the server has acknowledged it. Parcels go out one at a time in the order
 * they were typed, are tried again for as long as it takes, and stay when the server says no, until a person decides.
 */
export class Outbox {
  readonly #world: OutboxWorld;
  readonly #listeners = new Set<() => void>();
  #parcels: readonly Parcel[] = [];
  #state: OutboxState = { parcels: [], waiting: 0, sending: false, held: 0, stuck: 0, unkept: false, unreachable: false };
  #statuses: ReadonlyMap<string, ParcelStatus> = new Map();
  #order = 0;
  #pauseMs = FIRST_PAUSE_MS;
  #unkept = false;
  #unreachable = false;
  #running = false;

  constructor(world: OutboxWorld) {
    this.#world = world;
  }

  /** Takes over parcels left by an earlier page and sends what waits. */
  adopt(isOrphan: (parcel: Parcel) => boolean = () => true): void {
    const known = new Set(this.#parcels.map(({ sendId }) => sendId));
    const left = this.#world.keep.all().filter((parcel) => !known.has(parcel.sendId) && isOrphan(parcel));
    if (left.length === 0) return;
    const rested = left.map((parcel): Parcel => (parcel.status === 'sending' ? { ...parcel, status: 'waiting' } : parcel));
    this.#change([...this.#parcels, ...rested].sort(inOrder));
    void this.#pump();
  }

  /** Takes entries as one step and sends them, or holds them until `answer`. They are kept on the device before this returns. */
  enter(pianoId: string, envelope: Envelope, entries: readonly ReadingEntry[], status: 'waiting' | 'held' = 'waiting'): string {
    const parcel: Parcel = {
      ...envelope,
      pianoId,
      sendId: this.#world.newId(),
      entries: entries.map((entry) => this.#based(pianoId, envelope, entry)),
      status,
      by: this.#world.who(),
      typedAt: this.#world.now(),
      order: (this.#order += 1),
    };
    this.#put(parcel);
    this.#change([...this.#parcels, parcel]);
    void this.#pump();
    return parcel.sendId;
  }

  /** Says how the held figures of a state were weighed, null for not stated, and sends them. */
  answer(where: Pick<Parcel, 'pianoId' | 'cycle' | 'state'>, sessionId: string | null): void {
    for (const parcel of heldAt(this.#parcels, where)) this.#replace(parcel.sendId, (held) => ({ ...held, sessionId, status: 'waiting' }));
    void this.#pump();
  }

  /** Sends a parcel the server would not have again, over whatever stands there now. */
  writeOver(sendId: string): void {
    this.#replace(sendId, ({ problem: _, ...parcel }) => ({
      ...parcel,
      status: 'waiting',
      entries: parcel.entries.map(({ basedOn: _basedOn, ...entry }) => entry),
    }));
    void this.#pump();
  }

  /** Takes a parcel out on a person's word: it has not been acknowledged and will not be sent. */
  withdraw(sendId: string): Parcel | undefined {
    const parcel = this.#parcels.find((candidate) => candidate.sendId === sendId && candidate.status !== 'sending');
    if (parcel === undefined) return undefined;
    const bases = new Map(parcel.entries.map((entry) => [placeKeyOf(parcel, entry), entry]));
    this.#world.keep.drop(sendId);
    this.#change(this.#parcels.filter((other) => other !== parcel).map((other) => this.#rebased(other, sendId, (place) => bases.get(place))));
    void this.#pump();
    return parcel;
  }

  /** Tries at once, as when the network is back. */
  nudge(): void {
    this.#pauseMs = FIRST_PAUSE_MS;
    void this.#pump();
  }

  /** How a place of a piano stands; undefined when nothing of it is on its way. */
  statusOf(pianoId: string, place: PlaceKey): ParcelStatus | undefined {
    return this.#statuses.get(`${pianoId} ${place}`);
  }

  state = (): OutboxState => this.#state;

  subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => {
      this.#listeners.delete(listener);
    };
  };

  #based(pianoId: string, envelope: Envelope, entry: ReadingEntry): ParcelEntry {
    if (entry.basedOn !== undefined) return entry;
    const place = placeKeyOf(envelope, entry);
    const before = this.#parcels.findLast((parcel) => parcel.pianoId === pianoId && placesOf(parcel).includes(place));
    if (before !== undefined) return { ...entry, after: before.sendId };
    const basedOn = this.#world.standing(pianoId, envelope.cycle, place);
    return basedOn === undefined ? entry : { ...entry, basedOn };
  }

  /** The next parcel that waits for no other: an entry after a stuck one waits with it. */
  #next(): Parcel | undefined {
    const here = new Set(this.#parcels.map(({ sendId }) => sendId));
    return this.#parcels.find(({ status, entries }) => status === 'waiting' && entries.every(({ after }) => after === undefined || !here.has(after)));
  }

  async #pump(): Promise<void> {
    if (this.#running) return;
    this.#running = true;
    try {
      for (let parcel = this.#next(); parcel !== undefined; parcel = this.#next()) {
        if (!(await this.#deliver(parcel))) break;
      }
    } finally {
      this.#running = false;
    }
  }

  /** Answers false when there is no point in trying the next one now. */
  async #deliver(parcel: Parcel): Promise<boolean> {
    // That it is on its way need not be kept: a page that takes it over sends it again, and it is written once.
    this.#change(this.#parcels.map((current): Parcel => (current.sendId === parcel.sendId ? { ...current, status: 'sending' } : current)));
    try {
      const answer = await this.#world.send(parcel);
      this.#pauseMs = FIRST_PAUSE_MS;
      this.#unreachable = false;
      this.#world.keep.drop(parcel.sendId);
      const ids = idsAfter(parcel, answer);
      this.#world.acknowledged(parcel, answer);
      this.#change(
        this.#parcels
          .filter(({ sendId }) => sendId !== parcel.sendId)
          .map((other) => this.#rebased(other, parcel.sendId, (place) => ({ basedOn: ids.get(place) ?? null }))),
      );
      return true;
    } catch (failure) {
      return this.#failed(parcel, failure);
    }
  }

  #failed(parcel: Parcel, failure: unknown): boolean {
    const problem = failure instanceof ApiProblem ? failure : new ApiProblem({ status: 0, detail: String(failure) });
    if (problem.passing || problem.status === 401 || problem.status === 403) {
      this.#unreachable = true;
      this.#replace(parcel.sendId, (current) => ({ ...current, status: 'waiting' }));
      this.#world.later(() => void this.#pump(), this.#pauseMs);
      this.#pauseMs = Math.min(this.#pauseMs * 2, LONGEST_PAUSE_MS);
      return false;
    }
    this.#unreachable = false;
    this.#replace(parcel.sendId, (current) => ({
      ...current,
      status: problem.type.endsWith('#problem-conflict') ? 'conflict' : 'refused',
      problem: { status: problem.status, message: problem.message, errors: problem.errors },
    }));
    return true;
  }

  /** Entries that stood on a parcel now gone stand on what it left behind. */
  #rebased(parcel: Parcel, gone: string, left: (place: PlaceKey) => { readonly basedOn?: string | null | undefined; readonly after?: string | undefined } | undefined): Parcel {
    if (!parcel.entries.some(({ after }) => after === gone)) return parcel;
    const entries = parcel.entries.map((entry): ParcelEntry => {
      if (entry.after !== gone) return entry;
      const { after: _, ...rest } = entry;
      const base = left(placeKeyOf(parcel, entry));
      return { ...rest, ...(base?.basedOn === undefined ? {} : { basedOn: base.basedOn }), ...(base?.after === undefined ? {} : { after: base.after }) };
    });
    const changed = { ...parcel, entries };
    this.#put(changed);
    return changed;
  }

  #replace(sendId: string, turn: (parcel: Parcel) => Parcel): void {
    this.#change(
      this.#parcels.map((parcel) => {
        if (parcel.sendId !== sendId) return parcel;
        const changed = turn(parcel);
        this.#put(changed);
        return changed;
      }),
    );
  }

  #put(parcel: Parcel): void {
    this.#unkept = !this.#world.keep.put(parcel);
  }

  #change(parcels: readonly Parcel[]): void {
    this.#parcels = parcels;
    const held = parcels.filter(({ status }) => status === 'held');
    const onTheWay = parcels.filter(({ status }) => status === 'waiting' || status === 'sending');
    this.#statuses = new Map(parcels.flatMap((parcel) => placesOf(parcel).map((place) => [`${parcel.pianoId} ${place}`, parcel.status] as const)));
    this.#state = {
      parcels,
      waiting: figuresIn(onTheWay),
      held: figuresIn(held),
      sending: parcels.some(({ status }) => status === 'sending'),
      stuck: parcels.length - onTheWay.length - held.length,
      unkept: this.#unkept && parcels.length > 0,
      unreachable: this.#unreachable && onTheWay.length > 0,
    };
    for (const listener of this.#listeners) listener();
  }
}
