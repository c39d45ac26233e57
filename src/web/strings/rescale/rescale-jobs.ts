import type { Result } from '#result';
import { type RescaleProblem, type RescaleProgress, type Rescaled, rescaleSteps } from '#strings';
import type { ThreadWatch } from '../../ui/thread.ts';

/** What the thread says of the problem at a place: how far it came, and its end. */
export type RescaleNews = { readonly place: number } & (
  | { readonly type: 'progress'; readonly progress: RescaleProgress }
  | { readonly type: 'result'; readonly result: Result<Rescaled>; readonly wasStopped: boolean }
);

/** Time between two pauses: short enough that a stop is heard at once. */
const PAUSE_EVERY_MS = 60;

/** Runs problems one after the other; told to stop, it gives the best so far of the one it is at, and leaves out the rest. */
export async function runProblems(problems: readonly RescaleProblem[], watch: ThreadWatch<RescaleNews>): Promise<void> {
  for (const [place, problem] of problems.entries()) {
    if (watch.shouldStop()) break;
    await runProblem(place, problem, watch);
  }
}

async function runProblem(place: number, problem: RescaleProblem, { onNews, shouldStop, pause, nowMs }: ThreadWatch<RescaleNews>): Promise<void> {
  const steps = rescaleSteps(problem);
  let best: Rescaled | undefined;
  let spoken = nowMs();
  for (let step = steps.next(); ; step = steps.next()) {
    if (step.done === true) {
      onNews({ place, type: 'result', result: step.value, wasStopped: false });
      return;
    }
    best = step.value.best ?? best;
    if (nowMs() - spoken < PAUSE_EVERY_MS) continue;
    onNews({ place, type: 'progress', progress: step.value });
    await pause();
    spoken = nowMs();
    if (!shouldStop()) continue;
    if (best !== undefined) onNews({ place, type: 'result', result: { ok: true, value: best }, wasStopped: true });
    return;
  }
}
