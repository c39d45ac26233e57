import type { Issue } from '#result';
import { useCallback, useEffect, useRef, useState } from 'react';
import type { LeadAnswer, LeadJob, LeadsNews, LeadsOrder } from './leads-jobs.ts';

interface LeadsState {
  readonly isRunning: boolean;
  readonly of: number;
  readonly answers: readonly LeadAnswer[];
  readonly issues: readonly Issue[];
  readonly wasStopped: boolean;
  /** True when the worker itself failed. */
  readonly hasFailed: boolean;
}

const IDLE: LeadsState = { isRunning: false, of: 0, answers: [], issues: [], wasStopped: false, hasFailed: false };

/** Solves the keys on a thread of its own: started, watched, stopped. What was solved until a stop stays. */
export function useLeads(): { readonly state: LeadsState; readonly start: (jobs: readonly LeadJob[]) => void; readonly stop: () => void } {
  const [state, setState] = useState(IDLE);
  const worker = useRef<Worker>(undefined);
  const order = useRef(0);
  const end = useCallback((): void => {
    worker.current?.terminate();
    worker.current = undefined;
  }, []);
  useEffect(() => end, [end]);
  const start = useCallback((jobs: readonly LeadJob[]): void => {
    end();
    order.current += 1;
    const id = order.current;
    const made = new Worker(new URL('./leads.worker.ts', import.meta.url), { type: 'module' });
    worker.current = made;
    setState({ ...IDLE, isRunning: true, of: jobs.length });
    made.addEventListener('message', ({ data }: MessageEvent<LeadsNews>) => {
      if (data.id !== order.current) return;
      setState((before) => heard(before, data));
      if (data.type === 'done') end();
    });
    made.addEventListener('error', () => {
      setState((before) => ({ ...before, isRunning: false, hasFailed: true }));
      end();
    });
    made.postMessage({ id, jobs } satisfies LeadsOrder);
  }, [end]);
  const stop = useCallback((): void => {
    end();
    setState((before) => ({ ...before, isRunning: false, wasStopped: true }));
  }, [end]);
  return { state, start, stop };
}

function heard(before: LeadsState, news: LeadsNews): LeadsState {
  if (news.type === 'done') return { ...before, isRunning: false };
  return news.type === 'key' ? { ...before, answers: [...before.answers, news.answer] } : { ...before, issues: [...before.issues, ...news.issues] };
}
