import { readTable } from '#files';
import type { Answer } from '#workshop';
import { PDFDocument } from 'pdf-lib';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { seedDemo } from './seed-demo.ts';
import { type OpenBench, openBench } from './testing/open-bench.ts';

let bench: OpenBench;
beforeAll(async () => {
  bench = await openBench();
  await seedDemo(bench.store);
});
afterAll(async () => {
  expect(bench.failures).toEqual([]);
  await bench.close();
});

const bytesOf = async (path: string): Promise<Uint8Array> => {
  const response = await bench.send('GET', path);
  expect(response.status).toBe(200);
  return new Uint8Array(await response.arrayBuffer());
};
const rowsOf = async (path: string): Promise<readonly (readonly string[])[]> => {
  const table = await readTable({ bytes: await bytesOf(path) });
  return table.ok ? table.value.rows : [];
};

describe('the stock book of the demonstration', () => {
  it('has one sold with a margin, one at a loss, one in stock whose gap is named', async () => {
    const stock = (await (await bench.send('GET', '/api/shop/stock-book')).json()) as Answer<'getStockBook'>;
    expect(stock.book).toBe('demo');
    expect(stock.lines.map(({ number, marginMinor, taxMinor, gaps }) => [number, marginMinor, taxMinor, ...gaps])).toEqual([[1, 270_000, 43_109], [2, -50_000, 0], [3, null, null, 'sellerAddress']]);
    expect(stock.totals).toEqual([{ from: '2026-01-01', until: '2026-03-31', currency: 'EUR', count: 2, purchaseMinor: 600_000, saleMinor: 820_000, gainMinor: 270_000, lossMinor: 50_000, taxMinor: 43_109 }]);
  });

  it('comes as CSV, lines and totals, in the units of the API', async () => {
    const lines = await rowsOf('/api/shop/stock-book.csv');
    expect(lines).toHaveLength(4);
    const totals = await rowsOf('/api/shop/stock-book.csv?table=totals&period=year');
    expect(totals[1]).toEqual(['2026-01-01', '2026-12-31', 'EUR', '2', '600000', '6000.00', '820000', '8200.00', '270000', '2700.00', '50000', '500.00', '43109', '431.09']);
    expect(await rowsOf('/api/shop/stock-book.csv?which=open')).toHaveLength(2);
  });

  it('comes as a tagged PDF on its long side, in either language', async () => {
    const document = await PDFDocument.load(await bytesOf('/api/shop/stock-book.pdf?locale=de&year=2026'), { updateMetadata: false });
    const { width, height } = document.getPage(0).getSize();
    expect(width).toBeGreaterThan(height);
    expect(String(document.catalog)).toContain('StructTreeRoot');
  });

  it('refuses what is no year, and an own book stays apart', async () => {
    expect((await bench.send('GET', '/api/shop/stock-book?year=soon')).status).toBe(422);
    const own = (await (await bench.send('GET', '/api/shop/stock-book?book=shop')).json()) as Answer<'getStockBook'>;
    expect(own).toMatchObject({ lines: [], totals: [] });
  });
});
