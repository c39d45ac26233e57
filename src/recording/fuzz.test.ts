import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { readRecording } from './index.ts';
import { withFlacChecksum, withOggChecksums } from './testing/checksums.ts';
import { wavBytes } from './testing/wav-bytes.ts';

const museumFile = (name: string): Uint8Array => new Uint8Array(readFileSync(new URL(`./museum/${name}`, import.meta.url)));
const wav = wavBytes({ channels: 2, data: Uint8Array.from({ length: 400 }, (_, index) => (index * 37) % 256), before: [['LIST', Uint8Array.of(1, 2, 3)]] });
const files = { wav, flac: museumFile('tone.flac'), ogg: museumFile('tone.ogg'), mp3: museumFile('tone.mp3') };

/** Whatever the bytes are: an answer of finite samples that is no longer than the file could hold, or issues; never a throw. */
async function hold(bytes: Uint8Array): Promise<boolean> {
  const result = await readRecording(bytes);
  if (!result.ok) {
    expect(result.issues.length).toBeGreaterThan(0);
    for (const { given, allowed } of result.issues) expect([given, allowed].map(String).join('')).not.toBe('');
    return false;
  }
  const { samples, facts } = result.value;
  expect(samples.channels).toHaveLength(facts.channels);
  for (const channel of samples.channels) {
    expect(channel).toHaveLength(facts.frames);
    expect(channel.every(Number.isFinite)).toBe(true);
  }
  expect(facts.frames).toBeLessThanOrEqual(100 * bytes.length);
  return true;
}

const changes = (length: number, from = 0) => fc.array(fc.tuple(fc.integer({ min: from, max: length - 1 }), fc.integer({ min: 0, max: 255 })), { minLength: 1, maxLength: 12 });
const changed = (bytes: Uint8Array, at: readonly (readonly [number, number])[]): Uint8Array => {
  const copy = bytes.slice();
  for (const [place, value] of at) copy[place] = value;
  return copy;
};

const HARD = { numRuns: 40 };

describe.each(Object.entries(files))('a damaged %s file', (kind, bytes) => {
  it('cut anywhere is refused', async () => {
    await fc.assert(fc.asyncProperty(fc.integer({ min: 0, max: bytes.length - 1 }), async (length) => {
      // the last frames of an MP3 may hold nothing but what an encoder added, but each is whole or missing
      expect(await hold(bytes.subarray(0, length))).toBe(kind === 'mp3' && length > 0 && length % 288 === 0);
    }), HARD);
  }, 120_000);

  it('with bytes changed anywhere is read or refused', async () => {
    await fc.assert(fc.asyncProperty(changes(bytes.length), async (at) => { await hold(changed(bytes, at)); }), HARD);
  }, 120_000);

  it('with bytes changed in its first hundred, where lengths and rates stand, is read or refused', async () => {
    await fc.assert(fc.asyncProperty(changes(100), async (at) => { await hold(changed(bytes, at)); }), HARD);
  }, 120_000);
});

describe('a file whose checksums are right and whose content is not', () => {
  it('in OGG is read or refused', async () => {
    await fc.assert(fc.asyncProperty(changes(files.ogg.length, 28), async (at) => { await hold(withOggChecksums(changed(files.ogg, at))); }), HARD);
  }, 120_000);

  it('in FLAC is read or refused', async () => {
    const { flac } = files;
    const last = startOfLastFrame(flac);
    expect(last).toBeGreaterThan(42);
    expect(withFlacChecksum(flac.subarray(last))).toEqual(flac.slice(last));
    const printed = vi.spyOn(console, 'error');
    await fc.assert(fc.asyncProperty(changes(flac.length - 2, last + 7), async (at) => {
      const copy = changed(flac, at);
      copy.set(withFlacChecksum(copy.subarray(last)), last);
      await hold(copy);
    }), HARD);
    expect(printed).not.toHaveBeenCalled();
  }, 120_000);

  it('in MP3, which has none, is read or refused: heads stay, what stands between them changes', async () => {
    const FRAME_BYTES = 288;
    await fc.assert(fc.asyncProperty(fc.integer({ min: 0, max: files.mp3.length - 1 }), fc.integer({ min: 0, max: 255 }), async (from, value) => {
      await hold(files.mp3.map((byte, at) => (at >= from && at % FRAME_BYTES >= 4 ? value : byte)));
    }), HARD);
  }, 120_000);
});

describe('bytes of no kind', () => {
  it('are refused', async () => {
    await fc.assert(fc.asyncProperty(fc.uint8Array({ maxLength: 3000 }), async (bytes) => { await hold(bytes); }));
    for (const start of ['RIFF....WAVE', 'fLaC', 'OggS', 'ID3']) {
      await fc.assert(fc.asyncProperty(fc.uint8Array({ maxLength: 3000 }), async (bytes) => { await hold(Uint8Array.from([...new TextEncoder().encode(start), ...bytes])); }));
    }
  }, 120_000);

  it('that unpack to hours are given up at the limit: one frame, again and again', async () => {
    const { mp3 } = files;
    const frame = mp3.subarray(288 * 3, 288 * 4);
    const hours = new Uint8Array(288 * 30 * 3600 * 3).map((_, at) => frame[at % 288] ?? 0);
    expect(await readRecording(hours)).toMatchObject({ ok: false, issues: [{ code: 'length', path: 'durationS', params: { reason: 'recordingLong', max: 1800 } }] });
  }, 120_000);
});

/** All frames of the file begin with the same three bytes. */
function startOfLastFrame(flac: Uint8Array): number {
  const first = flac.findIndex((byte, at) => byte === 0xff && flac[at + 1] === 0xf8);
  const head = flac.subarray(first, first + 3);
  let last = first;
  for (let at = first; at < flac.length - 4; at += 1) if (head.every((byte, index) => flac[at + index] === byte)) last = at;
  return last;
}
