import { existsSync, mkdirSync, readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { testFolder } from '../testing/engines.ts';
import { type Engine, startEngine } from './engine.ts';
import { databaseFolder } from './folder.ts';
import { makeTemplate } from './template.ts';

describe('the embedded engine', () => {
  let dataDir: string;
  let engine: Engine;
  beforeAll(async () => {
    await makeTemplate();
    dataDir = testFolder();
    engine = await startEngine(await databaseFolder(dataDir));
    await engine.pool.query('create table kept (number int)');
  });
  afterAll(async () => {
    await engine.stop();
    rmSync(dataDir, { recursive: true, force: true });
  });
  const count = async () => (await engine.pool.query<{ count: number }>('select count(*)::int as count from kept')).rows[0]?.count;

  it('is set to write through to the disk', async () => {
    const { rows } = await engine.pool.query<{ setting: string }>(`select setting from pg_settings where name in ('fsync', 'full_page_writes', 'synchronous_commit', 'wal_sync_method') order by name`);
    expect(rows.map(({ setting }) => setting)).toEqual(['on', 'on', 'on', 'fsync']);
  });

  it('calls a real fsync for every commit, and none for reading', async () => {
    const before = engine.syncCount();
    for (let number = 0; number < 100; number += 1) await engine.pool.query('insert into kept values ($1)', [number]);
    const commits = engine.syncCount() - before;
    expect(commits).toBeGreaterThanOrEqual(100);
    expect(commits).toBeLessThan(150);
    for (let reads = 0; reads < 20; reads += 1) await count();
    expect(engine.syncCount() - before - commits).toBeLessThanOrEqual(1);
  });

  it('lends its one session to one caller at a time: interleaved transactions do not mix', async () => {
    const before = await count();
    const turns = Array.from({ length: 20 }, async (_, turn) => {
      const client = await engine.pool.connect();
      await client.query('begin');
      await client.query('insert into kept values ($1)', [turn]);
      await new Promise((resolve) => setTimeout(resolve, turn % 3));
      const { rows } = await client.query<{ seen: number }>('select count(*)::int as seen from kept');
      await client.query(turn % 2 === 0 ? 'commit' : 'rollback');
      client.release();
      return rows[0]?.seen ?? 0;
    });
    const alone = Array.from({ length: 10 }, () => engine.pool.query('insert into kept values (0)'));
    await Promise.all([...turns, ...alone]);
    expect(await count()).toBe((before ?? 0) + 10 + 10);
  });

  it('gives the next caller a clean session after one that broke off', async () => {
    const before = await count();
    const client = await engine.pool.connect();
    await client.query('begin');
    await client.query(`set search_path = 'nowhere'`);
    await client.query('insert into public.kept values (1)');
    await expect(client.query('selec')).rejects.toMatchObject({ code: '42601' });
    client.release(true);
    expect(await count()).toBe(before);
  });

  it('carries large messages both ways, whole', async () => {
    const long = 'ä🎹'.repeat(700_000);
    const { rows } = await engine.pool.query<{ text: string }>('select $1::text as text', [long]);
    expect(rows[0]?.text).toBe(long);
  });

  it('says what is wrong with a statement, and goes on', async () => {
    await expect(engine.pool.query('select 1/0')).rejects.toMatchObject({ code: '22012' });
    expect((await engine.pool.query('select 1 as one')).rows).toEqual([{ one: 1 }]);
  });
});

describe('the folder of the database files', () => {
  it('is made without a template too, and holds nothing half made', async () => {
    const dataDir = testFolder();
    const folder = await databaseFolder(dataDir, join(dataDir, 'no-template'));
    expect(readdirSync(dataDir)).toEqual(['database']);
    expect(existsSync(join(folder, 'PG_VERSION'))).toBe(true);
    rmSync(dataDir, { recursive: true, force: true });
  });

  it('is made anew when a first start was cut short', async () => {
    await makeTemplate();
    const dataDir = testFolder();
    mkdirSync(join(dataDir, 'database.unfinished'));
    await databaseFolder(dataDir);
    expect(readdirSync(dataDir)).toEqual(['database']);
    rmSync(dataDir, { recursive: true, force: true });
  });
});
