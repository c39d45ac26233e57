import { readFileSync } from 'node:fs';
import { generateDrizzleJson, generateMigration } from 'drizzle-kit/api';
import { describe, expect, it } from 'vitest';
import * as schema from './schema.ts';

describe('the migrations', () => {
  it('make the tables the program is written for', async () => {
    const journal = JSON.parse(readFileSync(new URL('./migrations/meta/_journal.json', import.meta.url), 'utf8')) as { entries: { idx: number }[] };
    const last = String(journal.entries.at(-1)?.idx).padStart(4, '0');
    const snapshot: unknown = JSON.parse(readFileSync(new URL(`./migrations/meta/${last}_snapshot.json`, import.meta.url), 'utf8'));
    expect(await generateMigration(snapshot as Parameters<typeof generateMigration>[0], generateDrizzleJson(schema))).toEqual([]);
  });

  it('key every table by workshop first', () => {
    for (const table of Object.values(schema)) expect(Object.keys(table)[0]).toBe('workshop');
  });
});
