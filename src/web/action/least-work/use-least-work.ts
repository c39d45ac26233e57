import type { LeastWork, LeastWorkProblem } from '#action';
import type { Result } from '#result';
import { useEffect, useRef, useState } from 'react';
import type { WorkAnswer, WorkQuestion } from './least-work.worker.ts';

/** The least work of a question. */
export interface Worked {
  /** The latest answer, and the question it answers; while a newer one is worked on, the one before. */
  readonly answered: { readonly problem: LeastWorkProblem; readonly result: Result<LeastWork> } | undefined;
  readonly isWorking: boolean;
  /** True when the thread itself failed. */
  readonly hasFailed: boolean;
}

/**
 * Works out the least work on a thread of its own, so that typing is never held up. Asked anew while it works, it finishes, then takes the
 * latest question; those between are passed over.
 */
export function useLeastWork(problem: LeastWorkProblem | undefined): Worked {
  const [answered, setAnswered] = useState<Worked['answered']>();
  const [hasFailed, setFailed] = useState(false);
  const thread = useRef<{ readonly worker: Worker; asked: WorkQuestion | undefined; next: LeastWorkProblem | undefined }>(undefined);
  useEffect(() => {
    const worker = new Worker(new URL('./least-work.worker.ts', import.meta.url), { type: 'module' });
    const own: NonNullable<typeof thread.current> = { worker, asked: undefined, next: undefined };
    thread.current = own;
    worker.addEventListener('message', ({ data: { id, result } }: MessageEvent<WorkAnswer>) => {
      if (own.asked?.id === id) setAnswered({ problem: own.asked.problem, result });
      own.asked = own.next === undefined ? undefined : { id: id + 1, problem: own.next };
      own.next = undefined;
      if (own.asked !== undefined) worker.postMessage(own.asked);
    });
    worker.addEventListener('error', () => { setFailed(true); });
    return () => { worker.terminate(); };
  }, []);
  useEffect(() => {
    const own = thread.current;
    if (own === undefined || problem === undefined) return;
    if (own.asked === undefined) {
      own.asked = { id: 1, problem };
      own.worker.postMessage(own.asked);
    } else {
      own.next = problem;
    }
  }, [problem]);
  return { answered: problem === undefined ? undefined : answered, isWorking: problem !== undefined && answered?.problem !== problem, hasFailed };
}
