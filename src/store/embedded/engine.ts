import { Worker } from 'node:worker_threads';
import type { Pool } from 'pg';
import { StoreFailure } from '../bench-store.ts';
import { quietPool } from '../pool.ts';
import type { EngineStart, FromEngine, ToEngine } from './wire.ts';
import { WireSocket } from './wire-socket.ts';

/** The database engine in a thread of its own, reached through a pool that lends its one session to one caller at a time. */
export interface Engine {
  readonly pool: Pool;
  /** How often the engine has called fsync since it started. */
  syncCount(): number;
  /** Shuts the database down in order; resolves when its files are whole and at rest. */
  stop(): Promise<void>;
}

/** Node 20 runs no TypeScript in a thread, so the thread is always the built file, from the source folder too. */
const workerFile = import.meta.url.endsWith('.ts') ? '../../../dist/store/embedded/worker.js' : './worker.js';

/** What a thread that is gone has for a number. */
const ENDED = -1;

/** Starts the engine on a folder that this process owns and that holds, or shall hold, the database files. */
export async function startEngine(folder: string): Promise<Engine> {
  const syncs = new SharedArrayBuffer(4);
  const worker = new Worker(new URL(workerFile, import.meta.url), { workerData: { folder, syncs } satisfies EngineStart });
  worker.setMaxListeners(0);
  await answered(worker, 'ready');
  const pool = quietPool({ max: 1, idleTimeoutMillis: 0, user: 'postgres', database: 'postgres', ssl: false, stream: () => new WireSocket(worker) });
  return {
    pool,
    syncCount: () => Atomics.load(new Int32Array(syncs), 0),
    stop: async () => {
      await pool.end();
      if (worker.threadId === ENDED) return;
      const stopped = answered(worker, 'stopped');
      worker.postMessage({ kind: 'stop' } satisfies ToEngine);
      await stopped;
      await worker.terminate();
    },
  };
}

/** Waits for the thread to say something; it may die or give up instead. */
function answered(worker: Worker, awaited: FromEngine['kind']): Promise<void> {
  return new Promise((resolve, reject) => {
    const done = (end: () => void): void => {
      worker.off('message', onMessage).off('error', onError).off('exit', onExit);
      end();
    };
    const fail = (message: string): void => { done(() => { reject(new StoreFailure('unavailable', `The embedded database does not run: ${message}`)); }); };
    const onMessage = (message: FromEngine): void => {
      if (message.kind === awaited) done(resolve);
      if (message.kind === 'broken') fail(message.message);
    };
    const onError = (error: Error): void => { fail(error.message); };
    const onExit = (): void => { fail('its thread ended'); };
    worker.on('message', onMessage).on('error', onError).on('exit', onExit);
  });
}
