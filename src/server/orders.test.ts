import { readTable } from '#files';
import type { Answer } from '#workshop';
import { PDFDocument } from 'pdf-lib';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { seedDemo } from './seed-demo.ts';
import { type OpenBench, openBench } from './testing/open-bench.ts';

let bench: OpenBench;
let at = '';
beforeAll(async () => {
  bench = await openBench();
  at = `/api/pianos/${(await seedDemo(bench.store)).pianos[0]?.id ?? ''}`;
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

describe('string order and stringing chart', () => {
  it.each([['string-order.pdf', 4], ['stringing-chart.pdf', 2]])('come as a tagged PDF: %s', async (path, pages) => {
    const document = await PDFDocument.load(await bytesOf(`${path}?paper=letter&locale=de&wastePct=10&frontLengthMm=120`), { updateMetadata: false });
    expect(document.getPageCount()).toBe(pages);
    expect(document.getPage(0).getWidth()).toBeCloseTo(612, 1);
    expect(String(document.catalog)).toContain('StructTreeRoot');
  });

  it('the wound sheet as CSV reads back as the same plan', async () => {
    const bytes = await bytesOf('string-order.csv');
    const body = { fileName: 'sheet.csv', contentBase64: Buffer.from(bytes).toString('base64'), cycle: 1, state: 'planned' };
    const preview = (await (await bench.send('POST', `${at}/import/preview`, body)).json()) as Answer<'previewImport'>;
    expect(preview.counts.refused).toBe(0);
    expect(preview.counts.update).toBe(0);
    expect(preview.counts.same + preview.counts.create).toBe(29);
  });

  it('wire and chart come as CSV in the reader’s decimal sign', async () => {
    const wire = await readTable({ bytes: await bytesOf('string-order.csv?table=wire&locale=de-DE') });
    expect(wire.ok && wire.value.rows.length).toBeGreaterThan(20);
    expect(new TextDecoder().decode(await bytesOf('stringing-chart.csv?locale=de-DE'))).toContain('30;D3;3;1,0668;inch;18,5;');
  });

  it.each([
    ['string-order.pdf?wastePct=400', 'wastePct', 'range'],
    ['string-order.pdf?wastePct=-1', 'wastePct', 'format'],
    ['stringing-chart.csv?state=before', 'state', 'choice'],
    ['string-order.csv?table=all', 'table', 'choice'],
  ])('%s is refused by field', async (path, field, code) => {
    const response = await bench.send('GET', `${at}/${path}`);
    expect(response.status).toBe(422);
    expect(await response.json()).toMatchObject({ errors: [{ path: field, code }] });
  });

  it('nothing noted is refused in words; a piano that is not there is 404', async () => {
    const { id } = (await (await bench.send('POST', '/api/pianos', { name: 'Bare', kind: 'grand' })).json()) as { id: string };
    const response = await bench.send('GET', `/api/pianos/${id}/string-order.pdf?locale=en`);
    expect(response.status).toBe(422);
    expect(await response.json()).toMatchObject({ detail: 'Nothing is noted of the strings in this state (Planned), so there is nothing to order.' });
    expect((await bench.send('GET', '/api/pianos/nowhere/string-order.pdf')).status).toBe(404);
  });
});
