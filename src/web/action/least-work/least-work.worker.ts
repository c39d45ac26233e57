import { type LeastWork, type LeastWorkProblem, leastWork } from '#action';
import type { Result } from '#result';

/** A question, and the number its answer comes back with. */
export interface WorkQuestion {
  readonly id: number;
  readonly problem: LeastWorkProblem;
}

export interface WorkAnswer {
  readonly id: number;
  readonly result: Result<LeastWork>;
}

self.addEventListener('message', ({ data: { id, problem } }: MessageEvent<WorkQuestion>) => {
  self.postMessage({ id, result: leastWork(problem) } satisfies WorkAnswer);
});
