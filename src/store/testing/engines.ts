import { randomUUID } from 'node:crypto';
import { mkdtempSync } from 'node:fs';
import { rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { makeTemplate } from '../embedded/template.ts';
import type { BenchStore } from '../bench-store.ts';
import { type OpenBook, type StoreOptions, openBook } from '../open.ts';
import { startServer } from './server.ts';

/** A bench book for tests, on one of the two places a book can be kept. */
export interface TestBook {
  /** The open store; another one after `reopen`. */
  readonly store: () => BenchStore;
  /** Closes the store and opens it again, as a new start of the program does. */
  reopen(): Promise<void>;
  /** Runs statements on the bare database, each on its own, as somebody with its password could. */
  behindItsBack(...statements: readonly string[]): Promise<void>;
  /** The rows of one bare query. */
  rows<T>(query: string): Promise<readonly T[]>;
  remove(): Promise<void>;
}

/** A clock that goes on by one second at each look, so that times in tests are told apart. */
export function testClock(): () => Date {
  let seconds = 0;
  return () => new Date(Date.UTC(2031, 4, 5, 9, 0, seconds++));
}

async function bookAt(place: Pick<StoreOptions, 'dataDir' | 'databaseUrl' | 'recordingsDir' | 'loggersDir'>, remove: () => Promise<void>): Promise<TestBook> {
  const clock = testClock();
  const open = (): Promise<OpenBook> => openBook({ ...place, clock, newId: randomUUID });
  let book = await open();
  return {
    store: () => book.store,
    reopen: async () => {
      await book.store.close();
      book = await open();
    },
    behindItsBack: async (...statements) => {
      for (const statement of statements) await book.pool.query(statement);
    },
    rows: async <T>(query: string) => (await book.pool.query(query)).rows as T[],
    remove: async () => {
      await book.store.close();
      await remove();
    },
  };
}

async function embeddedBook(): Promise<TestBook> {
  await makeTemplate();
  const dataDir = testFolder();
  return await bookAt({ dataDir }, () => rm(dataDir, { recursive: true, force: true }));
}

async function serverBook(): Promise<TestBook> {
  const server = await startServer();
  const [recordingsDir, loggersDir] = [testFolder(), testFolder()];
  return await bookAt({ databaseUrl: server.databaseUrl, recordingsDir, loggersDir }, async () => {
    await server.stop();
    for (const folder of [recordingsDir, loggersDir]) await rm(folder, { recursive: true, force: true });
  });
}

/** A folder of its own for a test. */
export function testFolder(): string {
  return mkdtempSync(join(tmpdir(), 'wrestplank-store-'));
}

/** Both places: the same tests run on each. */
export const engines = [
  { name: 'embedded', open: embeddedBook },
  { name: 'server', open: serverBook },
] as const;
