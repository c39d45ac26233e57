import { Worker } from 'node:worker_threads';
import type { Issue } from '#result';
import type { FromThread, ToThread } from './messages.ts';

/** What became of a task: worked out, refused for what the sound is, the thread gone, or called off. */
export type Outcome =
  | { readonly kind: 'answer'; readonly answer: unknown }
  | { readonly kind: 'refused'; readonly issues: readonly Issue[] }
  | { readonly kind: 'crashed'; readonly error: unknown }
  | { readonly kind: 'calledOff' };

/** A thread that works one task out at a time. One that ended is begun anew for the next task. */
export interface WorkThread {
  /** @param signal calls the task off: the thread is ended, whatever it is at. */
  run(task: ToThread, onProgress: (progress: number) => void, signal: AbortSignal): Promise<Outcome>;
  end(): Promise<void>;
}

/** Node 20 runs no TypeScript in a thread, so the thread is always the built file, from the source folder too. */
const builtFile = new URL(import.meta.url.endsWith('.ts') ? '../../dist/jobs/worker.js' : './worker.js', import.meta.url);

/** A thread of the program, or of another file that speaks the same messages. */
export function workThread(file: URL = builtFile): WorkThread {
  let worker: Worker | undefined;
  const drop = async (): Promise<void> => {
    const ending = worker;
    worker = undefined;
    await ending?.terminate();
  };
  return {
    run: async (task, onProgress, signal) => {
      worker ??= new Worker(file, { execArgv: [] });
      const outcome = await outcomeOf(worker, task, onProgress, signal);
      if (outcome.kind === 'crashed' || outcome.kind === 'calledOff') await drop();
      return outcome;
    },
    end: drop,
  };
}

function outcomeOf(worker: Worker, task: ToThread, onProgress: (progress: number) => void, signal: AbortSignal): Promise<Outcome> {
  return new Promise((resolve) => {
    const done = (outcome: Outcome): void => {
      worker.off('message', onMessage).off('error', onError).off('messageerror', onError).off('exit', onExit);
      signal.removeEventListener('abort', onAbort);
      resolve(outcome);
    };
    const onMessage = (message: FromThread): void => {
      if (message.kind === 'progress') onProgress(message.progress);
      else done(message);
    };
    const onError = (error: unknown): void => { done({ kind: 'crashed', error }); };
    const onExit = (code: number): void => { done({ kind: 'crashed', error: new Error(`the thread ended with ${String(code)}`) }); };
    const onAbort = (): void => { done({ kind: 'calledOff' }); };
    worker.on('message', onMessage).on('error', onError).on('messageerror', onError).on('exit', onExit);
    signal.addEventListener('abort', onAbort);
    if (signal.aborted) onAbort();
    else worker.postMessage(task, [task.bytes.buffer as ArrayBuffer]);
  });
}
