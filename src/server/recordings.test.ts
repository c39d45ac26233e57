import { writeWav } from '#recording';
import type { Answer } from '#workshop';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type OpenBench, openBench } from './testing/open-bench.ts';

let bench: OpenBench;
beforeAll(async () => { bench = await openBench(); });
afterAll(() => bench.close());

const sound = (seed: number): Uint8Array<ArrayBuffer> => writeWav({ sampleRateHz: 8000, channels: [Float64Array.from({ length: 400 }, (_, at) => Math.sin(at * seed))] });
const send = (body: Uint8Array<ArrayBuffer>, type = 'application/octet-stream', headers: Readonly<Record<string, string>> = {}) => bench.app.request('/api/recordings', { method: 'POST', headers: { 'content-type': type, ...headers }, body });

describe('sound files', () => {
  it('come back as they were sent, whole and in part, at an address that never changes', async () => {
    const bytes = sound(0.1);
    const kept = (await (await send(bytes)).json()) as { hash: string; byteCount: number; format: string };
    expect(kept).toMatchObject({ byteCount: bytes.byteLength, format: 'wav' });
    const whole = await bench.send('GET', `/api/recordings/${kept.hash}`);
    expect([whole.status, whole.headers.get('content-type'), whole.headers.get('content-length')]).toEqual([200, 'audio/wav', String(bytes.byteLength)]);
    expect(new Uint8Array(await whole.arrayBuffer())).toEqual(bytes);
    const part = await bench.send('GET', `/api/recordings/${kept.hash}`, undefined, { range: 'bytes=4-11' });
    expect([part.status, part.headers.get('content-range')]).toEqual([206, `bytes 4-11/${String(bytes.byteLength)}`]);
    expect(new Uint8Array(await part.arrayBuffer())).toEqual(bytes.subarray(4, 12));
    const end = await bench.send('GET', `/api/recordings/${kept.hash}`, undefined, { range: 'bytes=-5' });
    expect(new Uint8Array(await end.arrayBuffer())).toEqual(bytes.subarray(-5));
  });

  it('that are none, too many bytes, or fewer than were said are refused in words', async () => {
    expect((await send(new TextEncoder().encode('<html>no sound</html>'))).status).toBe(422);
    expect((await send(sound(0.2), 'text/plain')).status).toBe(415);
    const large = await send(sound(0.3), 'application/octet-stream', { 'content-length': '500000000' });
    expect([large.status, ((await large.json()) as { detail: string }).detail]).toEqual([413, expect.stringContaining('at most 400 MB')]);
    const cut = await send(sound(0.4), 'application/octet-stream', { 'content-length': '99999' });
    expect([cut.status, ((await cut.json()) as { errors: { code: string }[] }).errors[0]?.code]).toEqual([422, 'length']);
    for (const hash of ['..%2f..%2fetc', 'a'.repeat(64)]) expect((await bench.send('GET', `/api/recordings/${hash}`)).status).toBe(404);
  });

  it('are told of at a piano, put in line at once, and again only when asked', async () => {
    const { id } = (await (await bench.send('POST', '/api/pianos', { name: 'Recorded', kind: 'grand' })).json()) as { id: string };
    const file = (await (await send(sound(0.5))).json()) as object;
    const recording = (await (await bench.send('POST', `/api/pianos/${id}/recordings`, { cycle: 1, state: 'found', contents: 'note', file, key: 40 })).json()) as Answer<'addRecording'>;
    const jobs = async () => ((await (await bench.send('GET', `/api/pianos/${id}/jobs`)).json()) as Answer<'listJobs'>).jobs;
    expect(await jobs()).toMatchObject([{ recordingId: recording.id, status: 'waiting', task: { method: 'tone-note', input: { key: 40 } } }]);
    const [{ id: jid } = { id: '' }] = await jobs();
    expect(await (await bench.send('DELETE', `/api/pianos/${id}/jobs/${jid}`)).json()).toMatchObject({ status: 'cancelled' });
    await bench.send('PATCH', `/api/pianos/${id}/recordings/${recording.id}`, { contents: 'walk' });
    expect((await jobs()).map(({ status, task }) => `${status} ${task.method}`)).toEqual(['cancelled tone-note', 'waiting tone-run']);
    await bench.send('DELETE', `/api/pianos/${id}/recordings/${recording.id}`);
    expect(await (await bench.send('GET', `/api/pianos/${id}/recordings`)).json()).toEqual({ recordings: [] });
    expect(bench.failures).toEqual([]);
  });
});
