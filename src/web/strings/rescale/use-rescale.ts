import type { Result } from '#result';
import type { RescaleProblem, RescaleProgress, Rescaled } from '#strings';
import { type ThreadKind, useThread } from '../../ui/use-thread.ts';
import type { RescaleNews } from './rescale-jobs.ts';

/** One problem's end. */
export interface RescaleRun {
  readonly problem: RescaleProblem;
  readonly result: Result<Rescaled>;
  /** True where it was stopped: the best until then. */
  readonly wasStopped: boolean;
}

interface Known {
  /** At which of the problems the thread is. */
  readonly at: number;
  readonly progress: RescaleProgress | undefined;
  readonly runs: readonly RescaleRun[];
}

export interface RescaleState extends Known {
  readonly isRunning: boolean;
  /** Problems there are. */
  readonly of: number;
  /** True when the thread itself failed. */
  readonly hasFailed: boolean;
}

const rescaling: ThreadKind<readonly RescaleProblem[], RescaleNews, Known> = {
  make: () => new Worker(new URL('./rescale.worker.ts', import.meta.url), { type: 'module' }),
  nothing: { at: 0, progress: undefined, runs: [] },
  heard,
};

/** Rescales on a thread of its own. A new start gives up the one before. */
export function useRescale(): { readonly state: RescaleState; readonly start: (problems: readonly RescaleProblem[]) => void; readonly stop: () => void } {
  const { state: { isRunning, hasFailed, known, order }, start, stop } = useThread(rescaling);
  return { state: { ...known, isRunning, hasFailed, of: order?.length ?? 0 }, start, stop };
}

function heard(known: Known, news: RescaleNews, problems: readonly RescaleProblem[]): Known {
  if (news.type === 'progress') return { ...known, at: news.place, progress: { ...news.progress, best: news.progress.best ?? (known.at === news.place ? known.progress?.best : undefined) } };
  const problem = problems[news.place];
  if (problem === undefined) return known;
  return { at: news.place, progress: undefined, runs: [...known.runs, { problem, result: news.result, wasStopped: news.wasStopped }] };
}
