import type { Reading } from '#instrument';
import { call } from '../api/client.ts';
import { queryClient, readingsQuery } from '../api/queries.ts';
import { byPlace } from '../api/reading-book.ts';
import { atTheBench } from '../people/at-the-bench.ts';
import { acknowledgedSeq } from '../undo/undo-stack.ts';
import { browserKeep } from './keep.ts';
import { Outbox } from './outbox.ts';
import { type Parcel, placeKeyOf } from './parcel.ts';
import { claimWindow } from './window-claim.ts';

/** A stroke's own frame is painted before the line is taken up: a hand waits for the screen, not for the sending. */
const AFTER_PAINT_MS = 20;

/** Sends a parcel as a batch of the API; what only the outbox needs stays here. */
async function send({ pianoId, cycle, state, sessionId, locale, sendId, by = null, typedAt, entries }: Parcel) {
  const bare = entries.map(({ after: _, ...entry }) => entry);
  await new Promise((resolve) => { setTimeout(resolve, AFTER_PAINT_MS); });
  return await call('writeReadings', {
    params: { id: pianoId },
    by,
    body: { cycle, state, sessionId, sendId, typedAt: new Date(typedAt).toISOString(), entries: bare, ...(locale === undefined ? {} : { locale }) },
  });
}

function standing(pianoId: string, cycle: number, place: string): string | null | undefined {
  const readings = queryClient.getQueryData(readingsQuery(pianoId, cycle).queryKey);
  if (readings === undefined) return undefined;
  return byPlace(readings).get(place)?.id ?? null;
}

/** Puts what the server acknowledged where the screens read it, without asking for all of it again. */
function acknowledged(parcel: Parcel, answer: { readonly seq: number; readonly readings: readonly Reading[] }): void {
  const { pianoId, cycle } = parcel;
  const written = new Set(parcel.entries.map((entry) => placeKeyOf(parcel, entry)));
  queryClient.setQueryData(readingsQuery(pianoId, cycle).queryKey, (known) =>
    known === undefined ? known : [...known.filter((reading) => !written.has(placeKeyOf(reading, reading))), ...answer.readings],
  );
  acknowledgedSeq(pianoId, answer.seq);
  for (const part of ['events', 'audit', 'history']) void queryClient.invalidateQueries({ queryKey: ['piano', pianoId, part] });
  void queryClient.invalidateQueries({ queryKey: ['pianos'] });
}

const world = new Outbox({
  keep: browserKeep(localStorage),
  send,
  standing,
  acknowledged,
  newId: () => `${claimWindow.id}.${newId()}`,
  who: atTheBench,
  now: () => Date.now(),
  later: (run, afterMs) => void setTimeout(run, afterMs),
});

/** A random id also where the page is not served as a secure one. */
function newId(): string {
  return [...crypto.getRandomValues(new Uint8Array(12))].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}

function start(): void {
  void claimWindow.isOrphan().then((isOrphan) => {
    world.adopt(({ sendId }) => isOrphan(sendId.split('.')[0] ?? ''));
  });
  window.addEventListener('online', () => {
    world.nudge();
  });
  window.addEventListener('beforeunload', (event) => {
    const { waiting, held, unkept } = world.state();
    if (waiting > 0 || (unkept && held > 0)) event.preventDefault();
  });
}

/** The one outbox of this window. */
export const outbox = Object.assign(world, { start });
