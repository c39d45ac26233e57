import type { RecordingDraft } from '#instrument';
import { MAX_RECORDING_BYTES } from '#recording';
import { soundOf } from '#workshop';
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { blobsIn } from './blobs.ts';
import { SHOP } from './index.ts';
import { keepRecording } from './recordings.ts';
import { type TestBook, engines, testFolder } from './testing/engines.ts';
import { failureOf } from './testing/failure.ts';

/** Bytes that begin as a WAV file does. */
const wav = (salt: string, length = 2000): Buffer => Buffer.concat([Buffer.from('RIFF0000WAVE'), Buffer.from(salt), Buffer.alloc(length)]);
async function* inPieces(bytes: Uint8Array, size = 700): AsyncIterable<Uint8Array> {
  await Promise.resolve();
  for (let at = 0; at < bytes.byteLength; at += size) yield bytes.subarray(at, at + size);
}
const collected = async (pieces: AsyncIterable<Uint8Array>): Promise<Buffer> => {
  const all: Uint8Array[] = [];
  for await (const piece of pieces) all.push(piece);
  return Buffer.concat(all);
};

describe('the bytes of a recording', () => {
  const folder = testFolder();
  const blobs = blobsIn(folder, 'recording');
  const filesIn = () => readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) => /[0-9a-f]{64}|unfinished/u.test(name));

  it('are kept whole as they come, once however often they come', async () => {
    const bytes = wav('a');
    const kept = await keepRecording(blobs, inPieces(bytes));
    expect(kept).toMatchObject({ byteCount: bytes.byteLength, format: 'wav' });
    expect(await keepRecording(blobs, inPieces(bytes, 3))).toEqual(kept);
    expect(filesIn()).toEqual([join(kept.hash.slice(0, 2), kept.hash)]);
    expect(readFileSync(join(folder, kept.hash.slice(0, 2), kept.hash)).equals(bytes)).toBe(true);
    expect((await collected(blobs.readStream(kept.hash, { start: 8, end: 11 }))).toString()).toBe('WAVE');
  });

  it.each([['fLaC', 'flac'], ['OggS', 'ogg'], ['ID3\u0004', 'mp3'], ['0000ftypM4A ', 'm4a'], ['RF640000WAVE', 'wav']])('beginning with %j are %s', async (head, format) => {
    expect(await keepRecording(blobs, inPieces(Buffer.concat([Buffer.from(head), Buffer.alloc(40)])))).toMatchObject({ format });
  });

  it('that are none, empty, broken off or too many leave nothing behind', async () => {
    const before = filesIn();
    expect(await failureOf(keepRecording(blobs, inPieces(Buffer.from('<html>this is no sound at all</html>'))))).toMatchObject({ reason: 'refused', issues: [{ code: 'format' }] });
    expect(await failureOf(keepRecording(blobs, inPieces(Buffer.alloc(0))))).toMatchObject({ issues: [{ code: 'format', given: 'an empty file' }] });
    const brokenOff = async function* () {
      yield* inPieces(wav('b'));
      throw new Error('the line went dead');
    };
    await expect(keepRecording(blobs, brokenOff())).rejects.toThrow('the line went dead');
    const endless = async function* () {
      await Promise.resolve();
      const piece = wav('c', 64 * 1024 * 1024);
      for (let count = 0; count <= MAX_RECORDING_BYTES; count += piece.byteLength) yield piece;
      throw new Error('was not stopped');
    };
    expect(await failureOf(keepRecording(blobs, endless()))).toMatchObject({ issues: [{ code: 'length', allowed: 'at most 400 MB' }] });
    expect(filesIn()).toEqual(before);
  });
});

describe.each(engines)('recordings ($name)', ({ open }) => {
  let book: TestBook;
  beforeAll(async () => void (book = await open()));
  afterAll(() => book.remove());
  const store = () => book.store();
  const keep = (salt: string) => store().keepRecording(inPieces(wav(salt)));
  const taken = async (salt: string, rest: Partial<RecordingDraft> = {}): Promise<RecordingDraft> => ({ cycle: 1, state: 'found', contents: 'note', file: await keep(salt), key: 40, place: 'over the tail', ...rest });

  it('are told of, corrected and withdrawn as events, and undone', async () => {
    const piano = await store().addPiano(SHOP, { name: 'Heard', kind: 'grand' }, 'p1');
    const recording = await store().addRecording(piano.id, await taken('d', { fileName: 'c4.wav', device: 'measuring microphone', takenAt: '2031-05-05T08:59:00Z' }), 'p1');
    expect(recording).toMatchObject({ by: 'p1', copy: null, key: 40, remark: '' });
    const changed = await store().changeRecording(piano.id, recording.id, { key: 41, contents: 'walk' }, 'p2');
    expect(changed).toEqual({ ...recording, key: 41, contents: 'walk' });
    expect((await store().listEvents(piano.id)).map(({ kind }) => kind)).toEqual(['recording.changed', 'recording.added', 'piano.added']);
    await store().withdrawRecording(piano.id, recording.id, 'p1');
    expect(await store().listRecordings(piano.id)).toEqual([]);
    await store().undo(piano.id, 4, 'p1');
    expect(await store().listRecordings(piano.id)).toEqual([changed]);
    await store().undo(piano.id, 3, 'p1');
    expect(await store().listRecordings(piano.id)).toEqual([recording]);
    expect(await store().audit(piano.id)).toMatchObject({ whole: true, events: 6 });
  });

  it('refuse what cannot be: a key off the keyboard, a stay that has not been, bytes that were not kept or are told of wrongly', async () => {
    const piano = await store().addPiano(SHOP, { name: 'Refused', kind: 'grand' }, 'p1');
    const draft = await taken('e');
    const refused = async (rest: object) => (await failureOf(store().addRecording(piano.id, { ...draft, ...rest }, 'p1'))).issues.map(({ code, path }) => `${code} ${path}`);
    expect(await refused({ key: 89 })).toEqual(['range key']);
    expect(await refused({ cycle: 2 })).toEqual(['range cycle']);
    expect(await refused({ file: { ...draft.file, hash: 'a'.repeat(64) } })).toEqual(['unknown file.hash']);
    expect(await refused({ copy: { ...draft.file, byteCount: 7 } })).toEqual(['conflict copy.byteCount']);
  });

  it('are worked out by the copy without loss where there is one', async () => {
    const piano = await store().addPiano(SHOP, { name: 'Copied', kind: 'grand' }, 'p1');
    const copy = await keep('copy');
    const recording = await store().addRecording(piano.id, await taken('f', { copy }), 'p1');
    expect(soundOf(recording)).toEqual(copy);
    const [job] = await store().askAnalysis(piano.id, [recording.id]);
    expect(job?.task).toMatchObject({ hash: copy.hash, method: 'tone-note', input: { key: 40, firstMidi: 21, lastMidi: 108, a4Hz: 440, isLadder: false } });
  });
});
