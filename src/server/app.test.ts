import { type Answer, type RouteName, routes } from '#workshop';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type OpenBench, openBench } from './testing/open-bench.ts';

let bench: OpenBench;
beforeAll(async () => {
  bench = await openBench();
});
afterAll(async () => {
  expect(bench.failures).toEqual([]);
  await bench.close();
});

/** Calls a route and holds its answer to the route's own schema, strictly: nothing missing, nothing more. */
async function ask<N extends RouteName>(name: N, params: Readonly<Record<string, string>> = {}, body?: unknown, query = ''): Promise<Answer<N>> {
  const { method, path, answer } = routes[name];
  const response = await bench.send(method, path.replaceAll(/:(\w+)/gu, (_, part: string) => params[part] ?? '') + query, body);
  const text = await response.text();
  expect(response.status, text).toBe(200);
  expect(response.headers.get('content-type')).toMatch(/^application\/json/u);
  const parsed = answer.safeParse(JSON.parse(text));
  expect(parsed.error?.issues ?? [], name).toEqual([]);
  return JSON.parse(text) as Answer<N>;
}

describe('the bench over HTTP', () => {
  it('takes a piano in, weighs it, undoes, and answers as each route says', async () => {
    const piano = await ask('addPiano', {}, { name: 'Test grand', kind: 'grand' });
    const { id } = piano;
    expect((await ask('changePiano', { id }, { year: 1911 })).name).toBe('Test grand');
    const session = await ask('addSession', { id }, { cycle: 1, state: 'found', stepG: 1 });
    expect((await ask('changeSession', { id, sid: session.id }, { repeatabilityG: 0.5 })).stepG).toBe(1);
    const cell = (quantity: string, index: number, typed: string) => ({ quantity, scope: 'key', index, typed });
    const written = await ask('writeReadings', { id }, { cycle: 1, state: 'found', sessionId: session.id, entries: [cell('downWeightG', 40, '49,5'), cell('upWeightG', 40, '26')] });
    expect(written.readings.map(({ typed, value }) => [typed, value])).toEqual([['49,5', 49.5], ['26', 26]]);
    expect((await ask('listReadings', { id })).readings).toHaveLength(2);
    expect((await ask('listReadings', { id }, undefined, '?cycle=1')).readings).toHaveLength(2);
    expect((await ask('readingHistory', { id }, undefined, '?cycle=1&state=found&quantity=downWeightG&index=40')).readings).toHaveLength(1);
    await ask('setIntent', { id, cycle: '1' }, { even: 'downWeight', targetG: 49, toleranceG: 2, upWeightMinG: 22 });
    await ask('setScale', { id, cycle: '1' }, { mostBreakingPct: 65, wires: [{ name: 'Coil 3', use: 'plain', metal: 'steel', diameterMm: 1 }] });
    expect((await ask('setAction', { id, cycle: '1' }, { weightRatioNatural: 5.6, mostLeads: 5 })).mostLeads).toBe(5);
    const seen = await ask('addObservation', { id }, { cycle: 1, state: 'found', part: 'bridge', fault: 'split', fromKey: 60 });
    expect((await ask('changeObservation', { id, oid: seen.id }, { toKey: 64 })).toKey).toBe(64);
    expect((await ask('withdrawObservation', { id, oid: seen.id })).toKey).toBe(64);
    const { work } = await ask('addWork', { id }, { items: [{ cycle: 1, key: 40, remedy: 'repinCentres', stage: 1 }] });
    expect((await ask('changeWork', { id, wid: work[0]?.id ?? '' }, { status: 'done' })).status).toBe('done');
    await ask('undo', { id }, { seq: written.seq });
    expect((await ask('listReadings', { id })).readings).toHaveLength(0);
    expect((await ask('listEvents', { id }, undefined, '?limit=2')).events).toHaveLength(2);
    expect((await ask('audit', { id })).whole).toBe(true);
    expect((await ask('openCycle', { id })).cycle).toBe(2);
    await ask('getPiano', { id });
    expect((await ask('listPianos')).pianos.map(({ instrument }) => instrument.id)).toContain(id);
    expect((await ask('health')).store).toBe('embedded');
  });
});

describe('photos', () => {
  const bytes = Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 1, 2, 3]);
  const send = (type: string, body: Uint8Array<ArrayBuffer>) => bench.app.request('/api/photos', { method: 'POST', headers: { 'content-type': type }, body });

  it('come back as they were sent, at an address that never changes, and stand with what was seen', async () => {
    const kept = (await (await send('image/png', bytes)).json()) as { hash: string };
    const shown = await bench.send('GET', `/api/photos/${kept.hash}`);
    expect([shown.headers.get('content-type'), shown.headers.get('cache-control')]).toEqual(['image/png', 'private, max-age=31536000, immutable']);
    expect(new Uint8Array(await shown.arrayBuffer())).toEqual(bytes);
    const { id } = await ask('addPiano', {}, { name: 'Photographed', kind: 'upright' });
    const seen = await ask('addObservation', { id }, { cycle: 1, state: 'found', part: 'plate', fault: 'crack', photos: [{ hash: kept.hash, name: 'plate.png' }] });
    expect((await ask('getPiano', { id })).observations).toEqual([seen]);
  });

  it('that are none are refused, and a form of another site cannot send any', async () => {
    expect((await send('image/png', new TextEncoder().encode('<svg/>'))).status).toBe(422);
    expect((await send('text/plain', bytes)).status).toBe(415);
    expect((await bench.send('GET', '/api/photos/..%2f..%2fetc')).status).toBe(404);
  });
});

describe('what is wrong', () => {
  const problem = async (method: string, path: string, body?: unknown) => {
    const response = await bench.send(method, path, body);
    expect(response.headers.get('content-type')).toMatch(/^application\/problem\+json/u);
    const document = (await response.json()) as { status: number; errors: { path: string; given: unknown; allowed: string; code: string }[] };
    expect(document.status).toBe(response.status);
    return document;
  };

  it('is answered by one entry for every bad field', async () => {
    const { status, errors } = await problem('POST', '/api/pianos', { name: '', kind: 'organ', yaer: 1900 });
    expect(status).toBe(422);
    expect(errors.map(({ path, code }) => [path, code])).toEqual([['name', 'length'], ['kind', 'choice'], ['yaer', 'unknown']]);
  });

  it('a figure that cannot be names its cell, and nothing of the batch is written', async () => {
    const piano = await ask('addPiano', {}, { name: 'Another', kind: 'grand' });
    const entries = [{ quantity: 'downWeightG', scope: 'key', index: 1, typed: '50' }, { quantity: 'downWeightG', scope: 'key', index: 2, typed: 'fifty' }];
    const { status, errors } = await problem('POST', `/api/pianos/${piano.id}/readings`, { cycle: 1, state: 'found', entries });
    expect(status).toBe(422);
    expect(errors).toMatchObject([{ given: 'fifty', code: 'format' }]);
    expect((await ask('listReadings', { id: piano.id })).readings).toEqual([]);
  });

  it.each([
    ['GET', '/api/pianos/nowhere', undefined, 404],
    ['GET', '/api/nowhere', undefined, 404],
    ['DELETE', '/api/pianos', undefined, 404],
    ['POST', '/api/calc/nothing', {}, 404],
    ['GET', '/api/pianos/nowhere/readings?cycle=abc', undefined, 422],
    ['PUT', '/api/pianos/nowhere/intents/0', { even: 'downWeight', targetG: 49, toleranceG: 2, upWeightMinG: 22 }, 422],
  ])('%s %s with %j is %i', async (method, path, body, status) => {
    expect((await problem(method, path, body)).status).toBe(status);
  });

  it('text that is no JSON is named by line and column', async () => {
    const response = await bench.app.request('/api/pianos', { method: 'POST', body: '{"name":\n "A",}', headers: { 'content-type': 'application/json' } });
    expect(response.status).toBe(400);
    expect(await response.json()).toMatchObject({ errors: [{ path: 'line 2, column 6', code: 'format' }] });
  });

  it('a form is not taken for JSON', async () => {
    const response = await bench.app.request('/api/pianos', { method: 'POST', body: 'name=A', headers: { 'content-type': 'application/x-www-form-urlencoded' } });
    expect(response.status).toBe(415);
  });

  it('more than the limit is 413', async () => {
    const response = await bench.app.request('/api/calc/touch-weight', { method: 'POST', body: 'x'.repeat(21 * 1024 * 1024), headers: { 'content-type': 'application/json' } });
    expect(response.status).toBe(413);
  });

  it('an event touched since is a conflict', async () => {
    const piano = await ask('addPiano', {}, { name: 'Third', kind: 'upright' });
    const write = (typed: string) => ask('writeReadings', { id: piano.id }, { cycle: 1, state: 'found', entries: [{ quantity: 'downWeightG', scope: 'key', index: 1, typed }] });
    const first = await write('50');
    await write('51');
    expect((await problem('POST', `/api/pianos/${piano.id}/undo`, { seq: first.seq })).status).toBe(409);
  });
});
