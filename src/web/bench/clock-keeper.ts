import { explainIssue } from '#text';
import { useSyncExternalStore } from 'react';
import { call } from '../api/client.ts';
import { ApiProblem } from '../api/problem.ts';
import { sayProblem } from '../api/say-problem.ts';
import { readKept, writeKept } from '../kept/kept.ts';
import { localeOf, sayNow } from '../language/use-say.ts';
import { addCard, changeCard } from '../shop/shop-writing.ts';
import { preferences } from '../theme/preferences.ts';
import { dayHere } from '../ui/day-here.ts';
import { type ClockStep, madeBy } from './clock-steps.ts';

const STORAGE_KEY = 'wrestplank.clock';
const listeners = new Set<() => void>();
let steps = read();

function read(): readonly ClockStep[] {
  return readKept<readonly ClockStep[]>(localStorage, STORAGE_KEY, []);
}

function tell(next: readonly ClockStep[]): void {
  steps = next;
  for (const listener of listeners) listener();
}

/** Steps of the clock not yet in the book. They outlive a reload and a dead network, and other windows see them. */
export function useClockSteps(): readonly ClockStep[] {
  return useSyncExternalStore(subscribe, () => steps);
}

function subscribe(listener: () => void): () => void {
  listeners.add(listener);
  window.addEventListener('storage', reread);
  return () => {
    listeners.delete(listener);
    if (listeners.size === 0) window.removeEventListener('storage', reread);
  };
}

function reread({ key }: StorageEvent): void {
  if (key === STORAGE_KEY) tell(read());
}

/** Keeps the steps as they are after a turn, on the device first. */
export function turnSteps(turn: (standing: readonly ClockStep[]) => readonly ClockStep[]): void {
  const next = turn(read());
  writeKept(localStorage, STORAGE_KEY, next);
  tell(next);
}

/** Sends what waits, one step after the other, by one window at a time; what gets no answer waits on. */
export async function sendSteps(): Promise<void> {
  await navigator.locks.request(STORAGE_KEY, async () => {
    for (let step = nextStep(); step !== undefined; step = nextStep()) {
      const sent = step;
      try {
        await send(sent);
        turnSteps((standing) => without(standing, sent));
      } catch (failure) {
        if (!(failure instanceof ApiProblem) || failure.passing) return;
        const refused = whyNot(failure);
        turnSteps((standing) => standing.map((one) => (isSame(one, sent) ? { ...one, refused } : one)));
      }
    }
  });
}

function whyNot(failure: ApiProblem): string {
  const locale = localeOf(preferences().language);
  return failure.errors.length === 0 ? sayProblem(failure, sayNow()) : failure.errors.map((issue) => explainIssue(sayNow(), issue, locale)).join(' ');
}

function nextStep(): ClockStep | undefined {
  return read().find(({ refused }) => refused === undefined);
}

/** A start whose answer was lost is found in the book and not made again. */
async function send(step: ClockStep): Promise<void> {
  if (step.kind === 'stop') {
    await changeCard(step.card, { kind: 'hours', stoppedAt: step.stoppedAt });
    return;
  }
  const { pianoId, cycle, jobs, line, who, startedAt, stoppedAt } = step;
  const made = madeBy(step, (await call('getShop', { query: { kinds: 'hours' } })).cards);
  if (made === undefined) await addCard({ kind: 'hours', pianoId, cycle, jobs: [...jobs], line, who, startedAt, stoppedAt, on: dayHere(new Date(startedAt)) });
  else if (stoppedAt !== null && made.stoppedAt === null) await changeCard(made.id, { kind: 'hours', stoppedAt });
}

/** What was sent leaves; a stop taken along meanwhile stays and is sent as one of its own. */
function without(standing: readonly ClockStep[], sent: ClockStep): readonly ClockStep[] {
  return standing.flatMap((one) => (!isSame(one, sent) ? [one] : one.stoppedAt === sent.stoppedAt ? [] : [one]));
}

function isSame(one: ClockStep, other: ClockStep): boolean {
  if (one.kind === 'start') return other.kind === 'start' && one.startedAt === other.startedAt && one.who === other.who;
  return other.kind === 'stop' && one.card === other.card;
}
