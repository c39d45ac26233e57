import { PERSON_HEADER } from '#workshop';
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

const json = async <T>(answer: Promise<Response>): Promise<T> => (await (await answer).json()) as T;
interface Named { readonly reference: string; readonly name: string }

describe('who is at the bench, over HTTP', () => {
  it('stands behind every write that names them: the event, the reading and the proof', async () => {
    const { reference } = await json<Named>(bench.send('POST', '/api/people', { name: 'Ada Tester' }));
    const by = { [PERSON_HEADER]: reference };
    const { id } = await json<{ id: string }>(bench.send('POST', '/api/pianos', { name: 'Named', kind: 'grand' }, by));
    await bench.send('POST', `/api/pianos/${id}/readings`, { cycle: 1, state: 'found', entries: [{ quantity: 'downWeightG', scope: 'key', index: 3, typed: '49' }] }, by);
    await bench.send('PATCH', `/api/pianos/${id}`, { year: 1920 });
    const { events } = await json<{ events: { by: string }[] }>(bench.send('GET', `/api/pianos/${id}/events`));
    expect(events.map((event) => event.by)).toEqual(['bench', reference, reference]);
    const { readings } = await json<{ readings: { by: string }[] }>(bench.send('GET', `/api/pianos/${id}/readings`));
    expect(readings.map((reading) => reading.by)).toEqual([reference]);
    const proof = async (): Promise<string> => (await bench.send('GET', `/api/pianos/${id}/proof`)).text();
    expect(await proof()).toContain('As found: Ada Tester (1 figure)');
    await bench.send('DELETE', `/api/people/${reference}`);
    expect(await proof()).toContain('As found: name forgotten (1 figure)');
    expect(await json(bench.send('GET', `/api/pianos/${id}/audit`))).toMatchObject({ whole: true, events: 3 });
  });

  it('lists, corrects and forgets names', async () => {
    const { reference } = await json<Named>(bench.send('POST', '/api/people', { name: 'B. Tester' }));
    expect(await json(bench.send('PUT', `/api/people/${reference}`, { name: 'Ben Tester' }))).toEqual({ reference, name: 'Ben Tester' });
    expect(await json(bench.send('GET', '/api/people'))).toEqual({ people: [{ reference, name: 'Ben Tester' }] });
    expect((await bench.send('POST', '/api/people', { name: 'Ben Tester' })).status).toBe(409);
    expect((await bench.send('DELETE', `/api/people/${reference}`)).status).toBe(200);
    for (const method of ['DELETE', 'PUT']) expect((await bench.send(method, `/api/people/${reference}`, method === 'PUT' ? { name: 'C' } : undefined)).status).toBe(404);
  });

  it('refuses a name where a reference belongs, so that none ever stands in the log', async () => {
    const answer = await bench.send('POST', '/api/pianos', { name: 'Refused', kind: 'grand' }, { [PERSON_HEADER]: 'Ada Tester' });
    expect(answer.status).toBe(422);
    expect(await answer.json()).toMatchObject({ errors: [{ path: PERSON_HEADER, given: 'Ada Tester', code: 'format' }] });
  });
});
