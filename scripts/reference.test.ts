import { readFile } from 'node:fs/promises';
import { expect, it, vi } from 'vitest';

it('docs/reference.md is what the code says; else run: node scripts/reference.mjs', async () => {
  vi.stubEnv('LC_ALL', 'C');
  const { writtenReference } = await import('#cli');
  expect(await readFile(new URL('../docs/reference.md', import.meta.url), 'utf8')).toBe(await writtenReference());
});
