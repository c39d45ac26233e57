import type { LogEvent } from '#workshop';
import { call } from '../api/client.ts';
import { ApiProblem } from '../api/problem.ts';
import { sayProblem } from '../api/say-problem.ts';
import { queryClient, refreshPiano } from '../api/queries.ts';
import { sayNow } from '../language/use-say.ts';
import { outbox } from '../outbox/the-outbox.ts';
import { toast } from '../toast/toasts.ts';
import { acknowledgedSeq, forgetSeq, lastSeq } from './undo-stack.ts';

/** Puts an event into words. */
type SayEvent = (event: LogEvent) => string;

/** Undoes one event and says what was undone, or why it cannot be. The undo itself can be undone from the toast. */
export async function undoEvent(pianoId: string, seq: number, sayEvent: SayEvent): Promise<void> {
  const say = sayNow();
  try {
    const event = await call('undo', { params: { id: pianoId }, body: { seq } });
    forgetSeq(pianoId, seq);
    await refreshPiano(pianoId);
    toast(say('shell.undo.done', { what: sayEvent(event) }), {
      action: { label: say('shell.undo.redo'), perform: () => void undoEvent(pianoId, event.seq, sayEvent).then(() => { acknowledgedSeq(pianoId, seq); }) },
    });
  } catch (failure) {
    if (failure instanceof ApiProblem && !failure.passing) forgetSeq(pianoId, seq);
    toast(say('shell.undo.refused', { why: whyNot(failure) }), { tone: 'bad' });
  }
}

/** The event that stands in the way by its number; anything else as the server says it. */
function whyNot(failure: unknown): string {
  const later = failure instanceof ApiProblem ? failure.errors[0]?.params?.['later'] : undefined;
  return later === undefined ? sayProblem(failure, sayNow()) : sayNow()('shell.undo.blocked', { later });
}

/** Undoes the last step this window took at this piano: one still waiting is taken back, one acknowledged is undone in the log. */
export function undoLast(pianoId: string, sayEvent: SayEvent): void {
  const say = sayNow();
  const own = outbox.state().parcels.filter((parcel) => parcel.pianoId === pianoId);
  const waiting = own.findLast(({ status }) => status === 'waiting' || status === 'held');
  if (waiting !== undefined && outbox.withdraw(waiting.sendId) !== undefined) {
    toast(say('shell.undo.withdrawn', { count: waiting.entries.length }));
    return;
  }
  if (own.length > 0) {
    toast(say('shell.undo.later'));
    return;
  }
  void cardsWritten().then(() => {
    const seq = lastSeq(pianoId);
    if (seq === undefined) toast(say('shell.undo.nothing'));
    else void undoEvent(pianoId, seq, sayEvent);
  });
}

/** Waits for cards on their way to the server: the step just taken is the one to be undone, not the one before. */
async function cardsWritten(): Promise<void> {
  if (queryClient.isMutating() === 0) return;
  await new Promise<void>((resolve) => {
    const stop = queryClient.getMutationCache().subscribe(() => {
      if (queryClient.isMutating() > 0) return;
      stop();
      resolve();
    });
  });
}

/** Notes the event a card was just written by, so that Ctrl+Z undoes it: the newest of the log that touched the card. */
export async function noteWritten(pianoId: string, cardId: string): Promise<void> {
  const { events } = await call('listEvents', { params: { id: pianoId }, query: { limit: '5' } });
  const written = events.find(({ changes }) => changes.some(({ place }) => place === cardId));
  if (written !== undefined) acknowledgedSeq(pianoId, written.seq);
}
