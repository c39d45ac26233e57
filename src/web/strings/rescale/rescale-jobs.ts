import type { Result } from '#result';
import { type RescaleProblem, type RescaleProgress, type Rescaled, rescaleSteps } from '#strings';

/** What the worker is told. */
export type RescaleOrder = { readonly type: 'run'; readonly id: number; readonly problems: readonly RescaleProblem[] } | { readonly type: 'stop'; readonly id: number };

/** What the worker says: how far it came, the end of one problem, and the end of all. */
export type RescaleNews = { readonly id: number; readonly place: number } & (
  | { readonly type: 'progress'; readonly progress: RescaleProgress }
  | { readonly type: 'result'; readonly result: Result<Rescaled>; readonly wasStopped: boolean }
  | { readonly type: 'done' }
);

/** How the running of problems is watched, stopped, and how it lets others have their turn. */
export interface JobWatch {
  readonly onNews: (news: RescaleNews) => void;
  readonly shouldStop: () => boolean;
  /** Waits until messages that came meanwhile have been heard. */
  readonly pause: () => Promise<void>;
  readonly nowMs: () => number;
}

/** Time between two pauses: short enough that a stop is heard at once. */
const PAUSE_EVERY_MS = 60;

/** Runs problems one after the other; told to stop, it gives the best so far of the one it is at, and leaves out the rest. */
export async function runProblems(id: number, problems: readonly RescaleProblem[], watch: JobWatch): Promise<void> {
  for (const [place, problem] of problems.entries()) {
    if (watch.shouldStop()) break;
    await runProblem({ id, place }, problem, watch);
  }
  watch.onNews({ type: 'done', id, place: problems.length });
}

async function runProblem(at: { readonly id: number; readonly place: number }, problem: RescaleProblem, { onNews, shouldStop, pause, nowMs }: JobWatch): Promise<void> {
  const steps = rescaleSteps(problem);
  let best: Rescaled | undefined;
  let spoken = nowMs();
  for (let step = steps.next(); ; step = steps.next()) {
    if (step.done === true) {
      onNews({ ...at, type: 'result', result: step.value, wasStopped: false });
      return;
    }
    best = step.value.best ?? best;
    if (nowMs() - spoken < PAUSE_EVERY_MS) continue;
    onNews({ ...at, type: 'progress', progress: step.value });
    await pause();
    spoken = nowMs();
    if (!shouldStop()) continue;
    if (best !== undefined) onNews({ ...at, type: 'result', result: { ok: true, value: best }, wasStopped: true });
    return;
  }
}
