import { PDFDocument } from 'pdf-lib';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { seedDemo } from './seed-demo.ts';
import { type OpenBench, openBench } from './testing/open-bench.ts';

let bench: OpenBench;
let at = '';
const measured = { on: '2026-11-20', file: 'claps.wav', impulseCount: 6, edtS: Array(6).fill(null), t20S: [1.3, 1.5, 1.7, 1.8, 1.6, 1.3], t30S: Array(6).fill(null), quality: [] };
/** A piano in the bare demo room, measured: as many rows as a room comes to. */
let measuredAt = '';
beforeAll(async () => {
  bench = await openBench();
  at = `/api/pianos/${(await seedDemo(bench.store)).pianos[0]?.id ?? ''}`;
  const spec = { blowMm: 45, letOffMm: 1.5, dipMm: 10, aftertouchMm: 1 };
  expect((await bench.send('PUT', `${at}/actions/1`, { regulation: [{ register: 'middle', ...spec }] })).status).toBe(200);
  measuredAt = `/api/pianos/${((await (await bench.send('POST', '/api/pianos', { name: 'Measured, invented', kind: 'grand', lengthMm: 1830 })).json()) as { readonly id: string }).id}`;
  const { rooms: [bare] } = (await (await bench.send('GET', at)).json()) as { readonly rooms: readonly Readonly<Record<string, unknown>>[] };
  const { id: _id, at: _made, ...room } = bare ?? {};
  expect((await bench.send('POST', `${measuredAt}/rooms`, { ...room, measured: [measured] })).status).toBe(200);
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

  it.each(['a4', 'letter'].flatMap((paper) => ['en', 'de'].map((locale) => [paper, locale] as const)))('take two pages a room and two for the owner, none of them nearly empty: %s, %s', async (paper, locale) => {
    const pagesOf = async (sheet: string, of = at): Promise<number> => {
      const response = await bench.send('GET', `${of}/sheet.pdf?sheet=${sheet}&paper=${paper}&locale=${locale}`);
      return (await PDFDocument.load(await response.arrayBuffer(), { updateMetadata: false })).getPageCount();
    };
    expect(await pagesOf('room')).toBe(4);
    expect(await pagesOf('owner')).toBe(2);
    expect(await pagesOf('move')).toBe(2);
    expect(await pagesOf('room', measuredAt)).toBe(2);
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
