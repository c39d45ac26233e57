import { randomUUID } from 'node:crypto';
import { mkdtemp, readFile, readdir, rm } from 'node:fs/promises';
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
  folder = await mkdtemp(path.join(tmpdir(), 'wrestplank-order-'));
  const store = await openStore({ dataDir: file('data'), clock: () => new Date(), newId: randomUUID });
  id = (await seedDemo(store)).pianos[0]?.id ?? '';
  await store.close();
});
afterAll(() => rm(folder, { recursive: true, force: true }));

/** Runs the command here and gives back what it wrote. */
const order = (...words: readonly string[]): Promise<Ran> => runHere(['order', id, ...words, '--data', file('data')]);

describe('order at the command line', () => {
  it('writes the order as PDF and answers its gaps as JSON', async () => {
    const { code, out } = await order('--out', file('order.pdf'), '--waste-pct', '7,5', '--json');
    expect(code).toBe(0);
    expect(JSON.parse(out)).toMatchObject({ state: 'planned', wound: 29, plain: 59 });
    expect((await readFile(file('order.pdf'))).subarray(0, 5).toString()).toBe('%PDF-');
  });

  it('writes chart and wire as CSV, and says on standard error what is open', async () => {
    const chart = await order('--chart', '--out', file('chart.csv'));
    expect([chart.code, chart.out]).toEqual([0, '']);
    expect(chart.err).toContain('29 wound notes, 59 plain notes');
    expect((await readFile(file('chart.csv'), 'utf8')).split('\r\n')).toHaveLength(90);
    expect((await order('--table', 'wire', '--out', file('wire.csv'), '--lang', 'de-DE')).code).toBe(0);
    expect(await readFile(file('wire.csv'), 'utf8')).toContain('plain;steel;round;0,762;inch;12,5');
  });

  it.each<[string, readonly string[], string]>([
    ['a name that says no kind', ['--out', 'order.doc'], '--out'],
    ['a figure beyond its range', ['--waste-pct', '300', '--out', 'x.pdf'], '--waste-pct'],
    ['a figure that is none', ['--front-length-mm', 'long', '--out', 'x.pdf'], '--front-length-mm'],
    ['a stay that never was', ['--cycle', '9', '--out', 'x.pdf'], '--cycle'],
  ])('refuses %s by name with exit code 2 and writes nothing', async (_, words, named) => {
    const before = await readdir(folder);
    const { code, out, err } = await order(...words, '--json');
    expect([code, out]).toEqual([2, '']);
    expect((JSON.parse(err) as Problem).errors.map(({ path: at }) => at)).toEqual([named]);
    expect(await readdir(folder)).toEqual(before);
  });

  it('has nothing to order where nothing is noted', async () => {
    const { code, err } = await order('--state', 'finished', '--out', file('none.pdf'));
    expect([code, err.includes('nothing to order')]).toEqual([2, true]);
  });
});
