import { readTable } from '#files';
import { type Answer, routes } from '#workshop';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { seedDemo } from './seed-demo.ts';
import { type OpenBench, openBench } from './testing/open-bench.ts';

let bench: OpenBench;
let demoId = '';
beforeAll(async () => {
  bench = await openBench();
  demoId = (await seedDemo(bench.store)).pianos[0]?.id ?? '';
});
afterAll(async () => {
  expect(bench.failures).toEqual([]);
  await bench.close();
});

const source = (text: string, rest: object = {}) => ({ fileName: 'found.csv', contentBase64: Buffer.from(text).toString('base64'), cycle: 1, state: 'found', ...rest });

describe('tables in and out', () => {
  it('an import does what its preview said, once, and is undone as a whole', async () => {
    const piano = (await (await bench.send('POST', '/api/pianos', { name: 'From a table', kind: 'grand' })).json()) as { id: string };
    const at = `/api/pianos/${piano.id}`;
    const body = source('key;downWeightG;upWeightG\n1;52,5;27\n2;51;fast\n3;50;26\n', { locale: 'de' });
    const preview = (await (await bench.send('POST', `${at}/import/preview`, body)).json()) as Answer<'previewImport'>;
    expect(routes.previewImport.answer.safeParse(preview).error?.issues ?? []).toEqual([]);
    expect(preview.counts).toMatchObject({ create: 2, refused: 1 });
    expect((await bench.store.listReadings(piano.id))).toEqual([]);
    const ran = (await (await bench.send('POST', `${at}/import`, body)).json()) as Answer<'runImport'>;
    expect(routes.runImport.answer.safeParse(ran).error?.issues ?? []).toEqual([]);
    expect(ran.counts).toEqual(preview.counts);
    expect((await bench.store.listReadings(piano.id)).map(({ typed }) => typed).sort()).toEqual(['26', '27', '50', '52,5']);
    const again = (await (await bench.send('POST', `${at}/import`, body)).json()) as Answer<'runImport'>;
    expect(again).toMatchObject({ seq: null, counts: { same: 2, refused: 1 } });
    expect((await bench.send('POST', `${at}/undo`, { seq: ran.seq })).status).toBe(200);
    expect(await bench.store.listReadings(piano.id)).toEqual([]);
  });

  it.each([
    ['no base64', { contentBase64: 'not base64!' }],
    ['no figures below the header', { contentBase64: Buffer.from('key,downWeightG\n').toString('base64') }],
  ])('refuses %s and writes nothing', async (_, rest) => {
    const before = (await bench.store.listEvents(demoId, { limit: 1 }))[0]?.seq;
    const response = await bench.send('POST', `/api/pianos/${demoId}/import`, { ...source(''), ...rest });
    expect(response.status).toBe(422);
    expect(response.headers.get('content-type')).toMatch(/problem\+json/u);
    expect((await bench.store.listEvents(demoId, { limit: 1 }))[0]?.seq).toBe(before);
  });

  it.each(['csv', 'tsv', 'xlsx'])('an export as %s reads back as the same', async (format) => {
    const response = await bench.send('GET', `/api/pianos/${demoId}/export?format=${format}&state=finished`);
    expect(response.status).toBe(200);
    expect(response.headers.get('content-disposition')).toContain(`.${format}"`);
    const bytes = new Uint8Array(await response.arrayBuffer());
    const table = await readTable({ bytes });
    expect(table.ok && table.value.rows.length).toBeGreaterThan(88);
    const body = { ...source(''), contentBase64: Buffer.from(bytes).toString('base64'), state: 'finished' };
    const { counts } = (await (await bench.send('POST', `/api/pianos/${demoId}/import/preview`, body)).json()) as Answer<'previewImport'>;
    expect(counts).toMatchObject({ create: 0, update: 0, refused: 0 });
    expect(counts.same).toBeGreaterThanOrEqual(88);
  });

  it('refuses a format that is none', async () => {
    const response = await bench.send('GET', `/api/pianos/${demoId}/export?format=ods`);
    expect(response.status).toBe(422);
    expect(await response.json()).toMatchObject({ errors: [{ path: 'format', given: 'ods', code: 'choice' }] });
  });
});

describe('the proof', () => {
  it.each(['a4', 'letter'])('comes as a PDF on %s', async (paper) => {
    const response = await bench.send('GET', `/api/pianos/${demoId}/proof.pdf?paper=${paper}&locale=de`);
    expect(response.status).toBe(200);
    expect(response.headers.get('content-type')).toBe('application/pdf');
    const bytes = Buffer.from(await response.arrayBuffer());
    expect(bytes.subarray(0, 5).toString()).toBe('%PDF-');
  });

  it('comes as data with its blocks, and says that it is a demo', async () => {
    const document = (await (await bench.send('GET', `/api/pianos/${demoId}/proof?locale=en`)).json()) as { demo: boolean; blocks: unknown[] };
    expect(document.demo).toBe(true);
    expect(document.blocks.length).toBeGreaterThan(5);
  });

  it('of a piano that is not there is 404', async () => {
    expect((await bench.send('GET', '/api/pianos/nowhere/proof.pdf')).status).toBe(404);
  });
});
