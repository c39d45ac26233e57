import type { NodePgDatabase } from 'drizzle-orm/node-postgres';
import type { Blobs } from './blobs.ts';

/** The database, embedded or on a server: both speak through the same client. */
export type Database = NodePgDatabase;
export type Transaction = Parameters<Parameters<Database['transaction']>[0]>[0];

/** What the store is given from outside: it has no clock and makes no names of its own. */
export interface Surroundings {
  readonly clock: () => Date;
  readonly newId: () => string;
}

export interface Bench extends Surroundings {
  readonly db: Database;
  readonly photos: Blobs;
  readonly recordings: Blobs;
  /** Files of climate loggers. */
  readonly loggers: Blobs;
}
