import { recordingLevelOperation } from '#recording';
import type { BenchStore } from '#store';
import { describe, expect, it } from 'vitest';
import { createApp } from './app.ts';
import { httpExampleOf } from './testing/http-example.ts';

const failures: unknown[] = [];
const app = createApp({ store: new Promise<BenchStore>(() => undefined), version: '0', operations: [recordingLevelOperation], onFailure: (error) => failures.push(error) });
const example = httpExampleOf(recordingLevelOperation);
const wav = new Uint8Array(Buffer.from(String(example['file']), 'base64'));
const answer = { sampleRateHz: 8000, durationS: 0.25, channels: [{ clippedRuns: 0 }] };

const post = async (body: BodyInit, headers: Readonly<Record<string, string>> = {}) => {
  const response = await app.request('/api/calc/recording-level', { method: 'POST', body, headers });
  return { status: response.status, body: (await response.json()) as { readonly errors?: readonly { readonly path: string; readonly code: string }[] } };
};
const json = (input: unknown) => post(JSON.stringify(input), { 'content-type': 'application/json' });
const form = (parts: Readonly<Record<string, string | Uint8Array<ArrayBuffer>>>) => {
  const data = new FormData();
  for (const [name, part] of Object.entries(parts)) data.append(name, typeof part === 'string' ? part : new Blob([part]));
  return post(data);
};

describe('a calculation that takes a recording, over HTTP', () => {
  it('takes it as a part of a form, and in base64', async () => {
    expect(await form({ file: wav })).toMatchObject({ status: 200, body: answer });
    expect(await form({ file: wav, input: '{}' })).toMatchObject({ status: 200, body: answer });
    expect(await json({ file: example['file'] })).toMatchObject({ status: 200, body: answer });
  });

  it('answers a list in order, one that cannot be read among the others', async () => {
    expect((await json([example, { file: 'AAAA' }, {}])).body).toMatchObject([answer, { problem: { errors: [{ path: 'file', code: 'format' }] } }, { problem: { errors: [{ path: 'file', code: 'required' }] } }]);
  });

  it.each<readonly [string, () => Promise<{ status: number; body: unknown }>, number, string]>([
    ['what is no base64', () => json({ file: '§§' }), 422, 'file'],
    ['a path of the server’s own disk', () => json({ file: '/etc/passwd' }), 422, 'file'],
    ['a part of no such name', () => form({ file: wav, fiel: 'x' }), 422, 'fiel'],
    ['a form without its recording', () => form({ input: '{}' }), 422, 'file'],
    ['a field of no such name', () => form({ file: wav, input: '{"kye":4}' }), 422, 'kye'],
    ['fields that are no JSON', () => form({ file: wav, input: '{' }), 400, 'line 1, column 2'],
    ['fields that are no group', () => form({ file: wav, input: '[]' }), 422, 'input'],
    ['a recording cut short', () => form({ file: wav.slice(0, -10) }), 422, 'file.durationS'],
    ['a form that is none', () => post('garbage', { 'content-type': 'multipart/form-data; boundary=x' }), 400, ''],
  ])('refuses %s by name', async (_, send, status, path) => {
    const answered = await send();
    expect(answered.status).toBe(status);
    expect(answered.body).toMatchObject({ errors: [{ path }] });
  });

  it('goes on answering after garbage of every kind', async () => {
    for (const start of ['RIFF....WAVEfmt ', 'fLaC', 'OggS', 'ID3', '\u00ff\u00fb\u0090']) {
      const garbage = Uint8Array.from({ length: 50_000 }, (_, at) => (at < start.length ? start.charCodeAt(at) : (Math.imul(at, 2_654_435_761) >>> 13) & 0xff));
      expect((await form({ file: garbage })).status).toBe(422);
    }
    const [first, second] = await Promise.all([form({ file: wav }), json(example)]);
    expect([first.body, second.body]).toMatchObject([answer, answer]);
    expect(failures).toEqual([]);
  });

  it('refuses a form that is too large by its header, before it is read', async () => {
    const { status } = await post('x', { 'content-type': 'multipart/form-data; boundary=x', 'content-length': String(200 * 1024 * 1024) });
    expect(status).toBe(413);
  });
});
