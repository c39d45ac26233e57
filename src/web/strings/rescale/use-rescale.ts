import type { Result } from '#result';
import type { RescaleProblem, RescaleProgress, Rescaled } from '#strings';
import { useCallback, useEffect, useRef, useState } from 'react';
import type { RescaleNews, RescaleOrder } from './rescale-jobs.ts';

/** One problem's end. */
export interface RescaleRun {
  readonly problem: RescaleProblem;
  readonly result: Result<Rescaled>;
  /** True where it was stopped: the best until then. */
  readonly wasStopped: boolean;
}

export interface RescaleState {
  readonly isRunning: boolean;
  /** Problems there are, and at which of them the worker is. */
  readonly of: number;
  readonly at: number;
  readonly progress: RescaleProgress | undefined;
  readonly runs: readonly RescaleRun[];
  /** True when the worker itself failed. */
  readonly hasFailed: boolean;
}

const IDLE: RescaleState = { isRunning: false, of: 0, at: 0, progress: undefined, runs: [], hasFailed: false };

/** Rescales on a thread of its own: started, watched, stopped. A new start gives up the one before. */
export function useRescale(): { readonly state: RescaleState; readonly start: (problems: readonly RescaleProblem[]) => void; readonly stop: () => void } {
  const [state, setState] = useState(IDLE);
  const worker = useRef<Worker>(undefined);
  const order = useRef(0);
  const end = useCallback((): void => {
    worker.current?.terminate();
    worker.current = undefined;
  }, []);
  useEffect(() => end, [end]);
  const start = useCallback((problems: readonly RescaleProblem[]): void => {
    end();
    order.current += 1;
    const id = order.current;
    const made = new Worker(new URL('./rescale.worker.ts', import.meta.url), { type: 'module' });
    worker.current = made;
    setState({ ...IDLE, isRunning: true, of: problems.length });
    made.addEventListener('message', ({ data }: MessageEvent<RescaleNews>) => {
      if (data.id !== order.current) return;
      setState((before) => heard(before, data, problems));
      if (data.type === 'done') end();
    });
    made.addEventListener('error', () => {
      setState((before) => ({ ...before, isRunning: false, hasFailed: true }));
      end();
    });
    made.postMessage({ type: 'run', id, problems } satisfies RescaleOrder);
  }, [end]);
  const stop = useCallback((): void => {
    worker.current?.postMessage({ type: 'stop', id: order.current } satisfies RescaleOrder);
  }, []);
  return { state, start, stop };
}

function heard(before: RescaleState, news: RescaleNews, problems: readonly RescaleProblem[]): RescaleState {
  if (news.type === 'done') return { ...before, isRunning: false, progress: undefined };
  if (news.type === 'progress') return { ...before, at: news.place, progress: { ...news.progress, best: news.progress.best ?? (before.at === news.place ? before.progress?.best : undefined) } };
  const problem = problems[news.place];
  if (problem === undefined) return before;
  return { ...before, at: news.place, progress: undefined, runs: [...before.runs, { problem, result: news.result, wasStopped: news.wasStopped }] };
}
