import { quoteFiguresOf } from '#estimate';
import { readTable } from '#files';
import type { Answer } from '#workshop';
import { PDFDocument } from 'pdf-lib';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { seedDemo } from './seed-demo.ts';
import { type OpenBench, openBench } from './testing/open-bench.ts';

let bench: OpenBench;
let at = '';
let quote: Answer<'getPiano'>['quotes'][number];
beforeAll(async () => {
  bench = await openBench();
  const id = (await seedDemo(bench.store)).pianos[0]?.id ?? '';
  at = `/api/pianos/${id}`;
  const [found] = (await bench.store.getPiano(id)).quotes;
  if (found === undefined) throw new Error('the demo has no quote');
  quote = found;
});
afterAll(async () => {
  expect(bench.failures).toEqual([]);
  await bench.close();
});

const bytesOf = async (path: string): Promise<Uint8Array> => {
  const response = await bench.send('GET', `${at}/${path}`);
  expect(response.status).toBe(200);
  return new Uint8Array(await response.arrayBuffer());
};
const rowsOf = async (path: string): Promise<readonly (readonly string[])[]> => {
  const table = await readTable({ bytes: await bytesOf(path) });
  return table.ok ? table.value.rows : [];
};

describe('quotes as files', () => {
  it('come as a tagged PDF on either paper', async () => {
    const document = await PDFDocument.load(await bytesOf(`quotes/${quote.id}/quote.pdf?paper=letter&locale=de`), { updateMetadata: false });
    expect(document.getPageCount()).toBe(2);
    expect(String(document.catalog)).toContain('StructTreeRoot');
  });

  it('come as CSV whose lines, tax and stages sum to the total of the screen, to the last unit', async () => {
    const rows = await rowsOf(`quotes/${quote.id}/quote.csv`);
    const minors = (kind: string): number => rows.filter(([first]) => first === kind).reduce((sum, row) => sum + Number(row[3]), 0);
    const { totalMinor, taxMinor } = quoteFiguresOf(quote, null);
    expect([minors('total'), minors('stage'), minors('line') + minors('tax')]).toEqual([totalMinor, totalMinor, totalMinor]);
    expect(minors('tax')).toBe(taxMinor);
    const estimate = await rowsOf('estimate.csv');
    expect(estimate.find(([way, kind]) => way === quote.title && kind === 'total')?.[4]).toBe(String(totalMinor));
  });

  it('are not found where there are none', async () => {
    expect((await bench.send('GET', `${at}/quotes/none/quote.pdf`)).status).toBe(404);
    expect((await bench.send('GET', `${at}/estimate.csv?cycle=7`)).status).toBe(404);
  });
});

describe('the life of a quote over HTTP', () => {
  it('answers undo of what was sent with a problem that says so', async () => {
    const { events } = (await (await bench.send('GET', `${at}/events?limit=1000`)).json()) as Answer<'listEvents'>;
    const sent = events.find(({ kind }) => kind === 'quote.sent');
    const response = await bench.send('POST', `${at}/undo`, { seq: sent?.seq });
    expect(response.status).toBe(409);
    expect(await response.json()).toMatchObject({ errors: [{ path: 'seq', params: { reason: 'final' } }] });
  });

  it('refuses money with parts of a unit and dates that are none, by field', async () => {
    expect(await (await bench.send('POST', `${at}/quotes/${quote.id}/sending`, { on: '2026-02-30' })).json()).toMatchObject({ status: 422, errors: [{ path: 'on', code: 'format' }] });
    const { estimates } = (await (await bench.send('GET', at)).json()) as Answer<'getPiano'>;
    expect(await (await bench.send('PUT', `${at}/estimates/1`, { ...estimates['1'], rateMinor: 68.5 })).json()).toMatchObject({ status: 422, errors: [{ path: 'rateMinor' }] });
  });
});
