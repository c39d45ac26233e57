import { type CardOf, type ShopCard, isRunning } from '#workshop';

/** What a clock is started for. */
export interface ClockTarget {
  readonly pianoId: string;
  readonly cycle: number;
  readonly jobs: readonly string[];
  readonly line: string | null;
}

/** A start or stop that is on its way to the book of the shop; it waits on the device until it is there. `refused`: why the book did not take it. */
export type ClockStep =
  | ({ readonly kind: 'start'; readonly who: string | null; readonly startedAt: string; readonly stoppedAt: string | null; readonly refused?: string } & ClockTarget)
  | { readonly kind: 'stop'; readonly card: string; readonly stoppedAt: string; readonly refused?: string };

/** The one clock that runs at this bench: `card` is missing while its start is on its way. */
export interface RunningClock extends ClockTarget {
  readonly card?: string;
  readonly startedAt: string;
}

/** The clock that runs for somebody, steps on their way counted in. */
export function runningClockOf(steps: readonly ClockStep[], cards: readonly ShopCard[], who: string | null): RunningClock | undefined {
  const waiting = steps.find((step) => step.kind === 'start' && step.stoppedAt === null && step.who === who && step.refused === undefined);
  if (waiting?.kind === 'start') return waiting;
  const stopped = new Set(steps.flatMap((step) => (step.kind === 'stop' && step.refused === undefined ? [step.card] : [])));
  const card = cards.find((one): one is CardOf<'hours'> => one.kind === 'hours' && one.who === who && isRunning(one) && !stopped.has(one.id));
  return card?.startedAt == null ? undefined : { pianoId: card.pianoId, cycle: card.cycle, jobs: card.jobs, line: card.line, card: card.id, startedAt: card.startedAt };
}

/** The steps once the running clock is stopped: a start still on its way takes the stop along. */
export function withStop(steps: readonly ClockStep[], running: RunningClock, stoppedAt: string): readonly ClockStep[] {
  if (running.card !== undefined) return [...steps, { kind: 'stop', card: running.card, stoppedAt }];
  return steps.map((step) => (step.kind === 'start' && step.startedAt === running.startedAt && step.stoppedAt === null ? { ...step, stoppedAt } : step));
}

/** The steps once a clock is started; one that runs is stopped at the same moment. */
export function withStart(steps: readonly ClockStep[], running: RunningClock | undefined, started: ClockTarget & { readonly who: string | null; readonly startedAt: string }): readonly ClockStep[] {
  const before = running === undefined ? steps : withStop(steps, running, started.startedAt);
  return [...before, { kind: 'start', stoppedAt: null, ...started }];
}

/** The card a start made already, where its answer was lost on the way: the same person at the same moment. */
export function madeBy(step: Extract<ClockStep, { kind: 'start' }>, cards: readonly ShopCard[]): CardOf<'hours'> | undefined {
  return cards.find((card): card is CardOf<'hours'> => card.kind === 'hours' && card.who === step.who && card.startedAt !== null && Date.parse(card.startedAt) === Date.parse(step.startedAt));
}
