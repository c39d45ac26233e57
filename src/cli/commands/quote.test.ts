import { randomUUID } from 'node:crypto';
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Problem } from '#result';
import { seedDemo } from '#server';
import { openStore } from '#store';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Ran } from '../testing/run-command.ts';
import { runHere } from '../testing/run-here.ts';

let folder = '';
let id = '';
const file = (name: string): string => path.join(folder, name);

beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'wrestplank-quote-'));
  const store = await openStore({ dataDir: file('data'), clock: () => new Date(), newId: randomUUID });
  id = (await seedDemo(store)).pianos[0]?.id ?? '';
  await store.close();
});
afterAll(() => rm(folder, { recursive: true, force: true }));

const quote = (...words: readonly string[]): Promise<Ran> => runHere(['quote', id, ...words, '--data', file('data')]);

describe('quote at the command line', () => {
  it('writes the PDF, its table and the estimate, all with one total', async () => {
    const { code, out } = await quote('--out', file('quote.pdf'), '--json');
    expect(code).toBe(0);
    const { totalMinor } = JSON.parse(out) as { readonly totalMinor: number };
    expect((await readFile(file('quote.pdf'))).subarray(0, 5).toString()).toBe('%PDF-');
    expect((await quote('--out', file('quote.csv'))).code).toBe(0);
    expect(await readFile(file('quote.csv'), 'utf8')).toContain(`total,,Total,${String(totalMinor)},`);
    expect((await quote('--estimate', '--out', file('estimate.csv'))).code).toBe(0);
    expect(await readFile(file('estimate.csv'), 'utf8')).toContain(`Total,,${String(totalMinor)},`);
  });

  it.each<[string, readonly string[], string]>([
    ['a name that says no kind', ['--out', 'quote.doc'], '--out'],
    ['an estimate as PDF', ['--estimate', '--out', 'estimate.pdf'], '--out'],
    ['a quote that is not there', ['--quote', 'zz', '--out', 'x.pdf'], '--quote'],
    ['a stay that never was', ['--cycle', '9', '--out', 'x.pdf'], '--cycle'],
  ])('refuses %s by name with exit code 2', async (_, words, named) => {
    const { code, out, err } = await quote(...words, '--json');
    expect([code, out]).toEqual([2, '']);
    expect((JSON.parse(err) as Problem).errors.map(({ path: at }) => at)).toEqual([named]);
  });
});
