import { PDFDocument } from 'pdf-lib';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { seedDemo } from './seed-demo.ts';
import { type OpenBench, openBench } from './testing/open-bench.ts';

let bench: OpenBench;
let at = '';
beforeAll(async () => {
  bench = await openBench();
  at = `/api/pianos/${(await seedDemo(bench.store)).pianos[0]?.id ?? ''}`;
  const spec = { blowMm: 45, letOffMm: 1.5, dipMm: 10, aftertouchMm: 1 };
  expect((await bench.send('PUT', `${at}/actions/1`, { regulation: [{ register: 'middle', ...spec }] })).status).toBe(200);
});
afterAll(async () => {
  expect(bench.failures).toEqual([]);
  await bench.close();
});

describe('sheets for the bench over HTTP', () => {
  it('come as a tagged PDF on the paper asked for', async () => {
    const response = await bench.send('GET', `${at}/sheet.pdf?sheet=regulation&paper=letter&locale=de`);
    expect(response.status).toBe(200);
    const document = await PDFDocument.load(await response.arrayBuffer(), { updateMetadata: false });
    expect(document.getPage(0).getWidth()).toBeCloseTo(612, 1);
    expect(String(document.catalog)).toContain('StructTreeRoot');
  });

  it('come as CSV in the reader’s decimal sign', async () => {
    expect(await (await bench.send('GET', `${at}/sheet.csv?sheet=regulation&locale=de-DE`)).text()).toContain('blowMm;middle;natural;45;1;no');
  });

  it.each([['sheet.pdf', 'sheet', 'required'], ['sheet.pdf?sheet=all', 'sheet', 'choice'], ['sheet.csv?sheet=regulation&state=lost', 'state', 'choice']])('names what is wrong: %s', async (path, field, code) => {
    const response = await bench.send('GET', `${at}/${path}`);
    expect(response.status).toBe(422);
    expect(await response.json()).toMatchObject({ errors: [{ path: field, code }] });
  });

  it('says that there is nothing to print, and does not know other pianos', async () => {
    const { id } = (await (await bench.send('POST', '/api/pianos', { name: 'Bare', kind: 'grand' })).json()) as { readonly id: string };
    const response = await bench.send('GET', `/api/pianos/${id}/sheet.pdf?sheet=regulation&locale=en`);
    expect(await response.json()).toMatchObject({ detail: expect.stringContaining('nothing to put on a sheet') as string });
    expect((await bench.send('GET', '/api/pianos/nowhere/sheet.pdf?sheet=regulation')).status).toBe(404);
  });
});
