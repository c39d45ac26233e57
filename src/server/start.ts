import { randomUUID } from 'node:crypto';
import { existsSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { type Server, createServer } from 'node:http';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type { AnyOperation } from '#operation';
import { type JobRunner, startJobs } from '#jobs';
import type { BenchStore } from '#store';
import { getRequestListener } from '@hono/node-server';
import { createApp } from './app.ts';

/** Port taken when none is asked for: 49 grams, and 49 again. */
export const DEFAULT_PORT = 4949;

/** How many ports after the default are tried when it is taken. */
const PORTS_TRIED = 20;

export interface StartOptions {
  /** Opens the store; the pages are served while it opens, requests that need it wait. */
  readonly openStore: () => Promise<BenchStore>;
  readonly version: string;
  readonly operations: readonly AnyOperation[];
  /** Exactly this port, 0 for any; left out: the default, or the next free one. */
  readonly port?: number;
  readonly onFailure?: (error: unknown) => void;
}

export interface RunningServer {
  readonly url: string;
  /** The store, once it is open; rejects with the reason when it cannot be. */
  readonly store: Promise<BenchStore>;
  /** False when the pages have not been built. */
  readonly hasPages: boolean;
  /** Ends connections, lets what was begun come to its end, closes the store. */
  close(): Promise<void>;
}

const webRoot = fileURLToPath(new URL(import.meta.url.endsWith('.ts') ? '../../dist/web-app' : '../web-app', import.meta.url));

/** Starts the server on this machine alone. It listens at once and opens the store meanwhile. */
export async function startServer({ openStore, version, operations, port, onFailure }: StartOptions): Promise<RunningServer> {
  const hasPages = existsSync(path.join(webRoot, 'index.html'));
  let open: (store: BenchStore | PromiseLike<BenchStore>) => void = () => undefined;
  const store = new Promise<BenchStore>((resolve) => {
    open = resolve;
  });
  store.catch(() => undefined);
  const app = createApp({ store, version, operations, ...(hasPages ? { webRoot } : {}), ...(onFailure === undefined ? {} : { onFailure }) });
  const listener = getRequestListener(app.fetch);
  const server = createServer((incoming, outgoing) => {
    void listener(incoming, outgoing);
  });
  await listenOn(server, port === undefined ? Array.from({ length: PORTS_TRIED }, (_, index) => DEFAULT_PORT + index) : [port]);
  open(openStore());
  const jobs = store.then((opened): JobRunner => startJobs({ store: opened, name: randomUUID(), ...(onFailure === undefined ? {} : { onFailure }) }));
  jobs.catch(() => undefined);
  return {
    url: `http://127.0.0.1:${String((server.address() as AddressInfo).port)}`,
    store,
    hasPages,
    close: async () => {
      await stop(server);
      await jobs.then((running) => running.stop(), () => undefined);
      await store.then((opened) => opened.close(), () => undefined);
    },
  };
}

async function listenOn(server: Server, ports: readonly number[]): Promise<void> {
  const [port = 0, ...further] = ports;
  try {
    await new Promise<void>((resolve, reject) => {
      server.once('error', reject);
      server.listen(port, '127.0.0.1', () => {
        server.off('error', reject);
        resolve();
      });
    });
  } catch (error) {
    if (further.length === 0 || !(error instanceof Error && 'code' in error && error.code === 'EADDRINUSE')) throw error;
    await listenOn(server, further);
  }
}

/** Lets requests under way finish for three seconds, then ends what is left. */
function stop(server: Server): Promise<void> {
  return new Promise((resolve) => {
    const end = setTimeout(() => {
      server.closeAllConnections();
    }, 3000);
    server.close(() => {
      clearTimeout(end);
      resolve();
    });
    server.closeIdleConnections();
  });
}
