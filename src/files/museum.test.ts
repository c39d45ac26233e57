import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readTable } from './index.ts';

interface Exhibit {
  readonly file: string;
  readonly why: string;
  readonly sheet?: string;
  readonly table?: unknown;
  readonly refused?: { readonly code: string; readonly reason: string };
}

const folder = new URL('./museum/', import.meta.url);
const exhibits = JSON.parse(readFileSync(new URL('manifest.json', folder), 'utf8')) as readonly Exhibit[];

describe('museum of odd tables', () => {
  it.each(exhibits)('$file: $why', async ({ file, sheet, table, refused }) => {
    const read = await readTable({ bytes: readFileSync(new URL(file, folder)), ...(sheet === undefined ? {} : { sheet }) });
    if (refused === undefined) expect(read).toEqual({ ok: true, value: table });
    else expect(read).toMatchObject({ ok: false, issues: [{ code: refused.code, params: { reason: refused.reason } }] });
  });

  it('shows every file it keeps', () => {
    const kept = readdirSync(folder).filter((name) => !/^(?:\..*|README\.md|make\.mjs|manifest\.json)$/u.test(name));
    expect([...new Set(exhibits.map(({ file }) => file))].sort()).toEqual(kept.sort());
  });
});
