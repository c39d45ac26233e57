import { randomUUID } from 'node:crypto';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { operations } from '#catalogue';
import { type BenchStore, openStore } from '#store';
import type { Hono } from 'hono';
import { createApp } from '../app.ts';

/** The app on a real embedded store in a folder of its own, gone when closed. */
export interface OpenBench {
  readonly app: Hono;
  readonly store: BenchStore;
  /** Failures that were the program's own. */
  readonly failures: unknown[];
  send(method: string, path: string, body?: unknown, headers?: Readonly<Record<string, string>>): Promise<Response>;
  close(): Promise<void>;
}

export async function openBench(): Promise<OpenBench> {
  const dataDir = await mkdtemp(path.join(tmpdir(), 'wrestplank-server-'));
  const store = await openStore({ dataDir, clock: () => new Date(), newId: randomUUID });
  const failures: unknown[] = [];
  const app = createApp({ store, version: '0.0.0-test', operations, onFailure: (error) => failures.push(error) });
  return {
    app,
    store,
    failures,
    send: async (method, at, body, headers = {}) =>
      app.request(at, { method, headers: { ...(body === undefined ? {} : { 'content-type': 'application/json' }), ...headers }, ...(body === undefined ? {} : { body: JSON.stringify(body) }) }),
    close: async () => {
      await store.close();
      await rm(dataDir, { recursive: true, force: true });
    },
  };
}
