import { Worker } from 'node:worker_threads';
import { type Issue, type Result, refuse } from '#result';

/** A case of an operation of the catalogue, its recordings as bytes. */
export interface ThreadCase {
  readonly operation: string;
  readonly input: unknown;
}

/** Threads that work out cases with recordings, so that neither a long take nor a broken decoder holds anything else up. */
export interface CalcDesk {
  /** Runs a case as soon as a thread is free. One that takes too long is given up, its thread ended. @throws Error when the thread fails */
  run(operation: string, input: unknown): Promise<Result<unknown>>;
  close(): Promise<void>;
}

export interface DeskOptions {
  readonly threads: number;
  /** How long one case may take. */
  readonly mostMs: number;
}

/** Node 20 runs no TypeScript in a thread, so the thread is always the built file, from the source folder too, and is told of no conditions that lead to sources. */
const threadFile = new URL(import.meta.url.endsWith('.ts') ? '../../dist/files/calc-thread.js' : './calc-thread.js', import.meta.url);

/** Opens a desk. Threads begin with the first case each, stay for the next, and keep no process alive. */
export function openCalcDesk({ threads, mostMs }: DeskOptions): CalcDesk {
  const idle: (Worker | undefined)[] = Array.from({ length: threads }, () => undefined);
  const waiting: (() => void)[] = [];
  const running = new Set<Worker>();
  const seat = async (): Promise<Worker> => {
    while (idle.length === 0) await new Promise<void>((resolve) => waiting.push(resolve));
    const worker = idle.pop() ?? new Worker(threadFile, { execArgv: [] });
    worker.unref();
    running.add(worker);
    return worker;
  };
  const leave = (worker: Worker, isWell: boolean): void => {
    running.delete(worker);
    idle.push(isWell ? worker : undefined);
    waiting.shift()?.();
  };
  return {
    run: async (operation, input) => {
      const worker = await seat();
      const outcome = await outcomeOf(worker, { operation, input }, mostMs);
      if (!outcome.isWell) await worker.terminate();
      leave(worker, outcome.isWell);
      if (outcome.error !== undefined) throw outcome.error;
      return outcome.result;
    },
    close: async () => {
      await Promise.all([...running, ...idle].flatMap((worker) => (worker === undefined ? [] : [worker.terminate()])));
    },
  };
}

type Outcome = { readonly isWell: boolean; readonly result: Result<unknown>; readonly error?: undefined } | { readonly isWell: false; readonly error: Error };

function outcomeOf(worker: Worker, given: ThreadCase, mostMs: number): Promise<Outcome> {
  return new Promise((resolve) => {
    const done = (outcome: Outcome): void => {
      clearTimeout(late);
      worker.off('message', onMessage).off('error', onError).off('exit', onExit).unref();
      resolve(outcome);
    };
    const late = setTimeout(() => { done({ isWell: false, result: refuse(tooSlow(mostMs / 1000)) }); }, mostMs);
    const onMessage = (result: Result<unknown>): void => { done({ isWell: true, result }); };
    const onError = (error: unknown): void => { done({ isWell: false, error: error instanceof Error ? error : new Error(String(error)) }); };
    const onExit = (code: number): void => { done({ isWell: false, error: new Error(`the thread ended with ${String(code)}`) }); };
    worker.on('message', onMessage).on('error', onError).on('exit', onExit).ref();
    worker.postMessage(given);
  });
}

const tooSlow = (max: number): Issue => ({ code: 'length', path: '', given: `more than ${String(max)} s of work`, allowed: `at most ${String(max)} s`, params: { reason: 'recordingSlow', max } });
