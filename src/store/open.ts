import { mkdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { drizzle } from 'drizzle-orm/node-postgres';
import type { Pool } from 'pg';
import { benchStore } from './bench.ts';
import { type BenchStore, StoreFailure } from './bench-store.ts';
import { type Blobs, blobsIn, noBlobs } from './blobs.ts';
import type { Bench, Surroundings } from './database.ts';
import { startEngine } from './embedded/engine.ts';
import { databaseFolder } from './embedded/folder.ts';
import { ownFolder } from './embedded/owner-lock.ts';
import { guarded, sayEmbeddedAway, sayServerAway } from './failures.ts';
import { migrateTables } from './migrate.ts';
import { quietPool } from './pool.ts';

export interface StoreOptions extends Surroundings {
  /** Folder of the embedded database; one process owns it. */
  readonly dataDir?: string;
  /** PostgreSQL server, `postgres://…`; wins over `dataDir`. */
  readonly databaseUrl?: string;
  /** Folder of the photos; left out, `photos` in the data folder. A database server keeps none: without a folder photos are refused. */
  readonly photosDir?: string;
  /** Folder of the recordings; left out, `recordings` in the data folder. As with photos, a database server keeps none by itself. */
  readonly recordingsDir?: string;
  /** Folder of the files of climate loggers; left out, `loggers` in the data folder. As with photos, a database server keeps none by itself. */
  readonly loggersDir?: string;
}

/** An open store and what lies beneath it; only the store leaves this module. */
export interface OpenBook {
  readonly store: BenchStore;
  readonly pool: Pool;
}

/** Opens the bench book, embedded in this process or on a PostgreSQL server, its tables brought up to date. */
export async function openStore(options: StoreOptions): Promise<BenchStore> {
  return (await openBook(options)).store;
}

/** Opens the bench book and shows the pool beneath, for tests that look behind its back. */
export async function openBook(options: StoreOptions): Promise<OpenBook> {
  if (options.databaseUrl !== undefined) return await openServer(options.databaseUrl, withFolders(options));
  if (options.dataDir !== undefined) return await openEmbedded(resolve(options.dataDir), withFolders(options, options.dataDir));
  throw new Error('a store needs a data folder or the address of a database');
}

type Kept = Omit<Bench, 'db'>;

function withFolders({ clock, newId, photosDir, recordingsDir, loggersDir }: StoreOptions, dataDir?: string): Kept {
  const kept = (named: string | undefined, what: string, many: string): Blobs => {
    const folder = named ?? (dataDir === undefined ? undefined : join(dataDir, many));
    return folder === undefined ? noBlobs(what, many) : blobsIn(resolve(folder), what);
  };
  return { clock, newId, photos: kept(photosDir, 'photo', 'photos'), recordings: kept(recordingsDir, 'recording', 'recordings'), loggers: kept(loggersDir, 'logger file', 'loggers') };
}

async function openEmbedded(dataDir: string, surroundings: Kept): Promise<OpenBook> {
  mkdirSync(dataDir, { recursive: true });
  const letGo = await ownFolder(dataDir);
  try {
    const engine = await startEngine(await databaseFolder(dataDir));
    await migrateTables(engine.pool);
    const store = benchStore({ kind: 'embedded', sayAway: sayEmbeddedAway, bench: { ...surroundings, db: drizzle(engine.pool) }, close: () => engine.stop().finally(letGo) });
    return { store, pool: engine.pool };
  } catch (error) {
    await letGo();
    throw error;
  }
}

async function openServer(databaseUrl: string, surroundings: Kept): Promise<OpenBook> {
  const sayAway = sayServerAway(hostOf(databaseUrl));
  const pool = quietPool({ connectionString: databaseUrl, max: 10, connectionTimeoutMillis: 10_000 });
  try {
    await guarded(sayAway, () => migrateTables(pool));
  } catch (error) {
    await pool.end();
    throw error;
  }
  return { store: benchStore({ kind: 'server', sayAway, bench: { ...surroundings, db: drizzle(pool) }, close: () => pool.end() }), pool };
}

/** Host and port of the address, and nothing else of it: the rest is ours to sign in with. */
function hostOf(databaseUrl: string): string {
  try {
    const { host } = new URL(databaseUrl);
    return host === '' ? '' : ` at ${host}`;
  } catch {
    throw new StoreFailure('unavailable', 'The address of the PostgreSQL server is not of the form postgres://host:port/database.');
  }
}
