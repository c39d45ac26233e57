import { randomUUID } from 'node:crypto';
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { openStore } from '#store';
import type { StockBook } from '#workshop';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Ran } from '../testing/run-command.ts';
import { runHere } from '../testing/run-here.ts';

let folder = '';
const file = (name: string): string => path.join(folder, name);

beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'wrestplank-stock-'));
  const store = await openStore({ dataDir: file('data'), clock: () => new Date(), newId: randomUUID });
  const { id } = await store.addShopCard('shop', { kind: 'acquisition', number: 1, on: '2031-01-02', priceMinor: 150_000, currency: 'GBP', eligible: true }, 'bench');
  await store.addShopCard('shop', { kind: 'sale', acquisition: id, on: '2031-02-03', priceMinor: 200_000, currency: 'GBP', place: 'GB' }, 'bench');
  await store.addShopCard('shop', { kind: 'taxYear', fromMonth: 5 }, 'bench');
  await store.close();
});
afterAll(() => rm(folder, { recursive: true, force: true }));

const stockBook = (...words: readonly string[]): Promise<Ran> => runHere(['stock-book', ...words, '--data', file('data')]);

describe('stock-book at the command line', () => {
  it('writes PDF, lines and totals, and says what is missing (GOV-UK-MARGIN: bought 1500, sold 2000, tax 83.33)', async () => {
    const { code, out } = await stockBook('--out', file('book.pdf'), '--json');
    expect(code).toBe(0);
    expect((JSON.parse(out) as StockBook).totals).toMatchObject([{ from: '2031-02-01', until: '2031-04-30', taxMinor: 8333 }]);
    expect((await readFile(file('book.pdf'))).subarray(0, 5).toString()).toBe('%PDF-');
    const lines = await stockBook('--out', file('book.csv'), '--year', '2030');
    expect([lines.code, lines.err]).toEqual([0, expect.stringContaining('1: seller missing; address of the seller missing; description of the piano missing; buyer missing')]);
    expect((await stockBook('--totals', '--out', file('totals.csv'), '--period', 'month')).code).toBe(0);
    expect(await readFile(file('totals.csv'), 'utf8')).toContain('2031-02-01,2031-02-28,GBP,1,150000,1500.00,200000,2000.00,50000,500.00,0,0.00,8333,83.33');
  });

  it('refuses what is no year and no file it can write', async () => {
    expect((await stockBook('--out', file('x.csv'), '--year', '31')).code).toBe(2);
    expect((await stockBook('--out', file('x.docx'))).code).toBe(2);
    expect((await stockBook('--totals', '--out', file('x.pdf'))).code).toBe(2);
  });
});
