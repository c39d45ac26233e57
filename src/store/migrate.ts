import { fileURLToPath } from 'node:url';
import { sql } from 'drizzle-orm';
import { readMigrationFiles } from 'drizzle-orm/migrator';
import { drizzle } from 'drizzle-orm/node-postgres';
import { migrate } from 'drizzle-orm/node-postgres/migrator';
import type { Pool } from 'pg';
import { StoreFailure } from './bench-store.ts';
import type { Database } from './database.ts';

const migrationsFolder = fileURLToPath(new URL('./migrations', import.meta.url));
/** Any number will do, as long as every program that migrates takes the same: only one does at a time. */
const MIGRATING = 731_804;

/** Brings the tables up to this program. Tables made by a newer one are left alone, and it is said so. */
export async function migrateTables(pool: Pool): Promise<void> {
  const client = await pool.connect();
  try {
    const db: Database = drizzle(client);
    await db.execute(sql`select pg_advisory_lock(${MIGRATING})`);
    await refuseNewer(db);
    await migrate(db, { migrationsFolder });
    await db.execute(sql`select pg_advisory_unlock(${MIGRATING})`);
    client.release();
  } catch (error) {
    client.release(true);
    throw error;
  }
}

async function refuseNewer(db: Database): Promise<void> {
  const known = readMigrationFiles({ migrationsFolder }).at(-1)?.folderMillis ?? 0;
  const { rows } = await db.execute<{ there: boolean }>(sql`select to_regclass('drizzle.__drizzle_migrations') is not null as there`);
  if (rows[0]?.there !== true) return;
  const { rows: newer } = await db.execute(sql`select 1 from drizzle.__drizzle_migrations where created_at > ${known}`);
  if (newer.length > 0) throw new StoreFailure('unavailable', 'This book was written by a newer Wrestplank. Open it with that one; nothing was changed.');
}
