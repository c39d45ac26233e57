import { readFile } from 'node:fs/promises';
import { readRecording, writeWav } from '#recording';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { MUSEUM_RATE_HZ, museumSound } from '../src/recording/testing/museum.ts';
import { wavBytes } from '../src/recording/testing/wav-bytes.ts';
import { fileDesk } from './support/desk.ts';

const desk = fileDesk();
let page: Page;
beforeAll(async () => { page = await desk.open('/'); });
afterAll(async () => { await page.context().close(); });

const museum = (name: string) => readFile(new URL(`../src/recording/museum/${name}`, import.meta.url));

/** What the browser makes of a sound file by itself, at the file's own rate; nothing where it makes nothing of it. */
async function decodedByBrowser(bytes: Uint8Array, rateHz: number): Promise<{ readonly rateHz: number; readonly channels: readonly (readonly number[])[] } | undefined> {
  return await page.evaluate(async ([base64, rate]) => {
    const file = Uint8Array.from(atob(base64), (sign) => sign.charCodeAt(0));
    const sound = await new OfflineAudioContext(1, 1, rate).decodeAudioData(file.buffer).catch(() => undefined);
    return sound === undefined ? undefined : { rateHz: sound.sampleRate, channels: Array.from({ length: sound.numberOfChannels }, (_, channel) => [...sound.getChannelData(channel)]) };
  }, [Buffer.from(bytes).toString('base64'), rateHz] as const);
}

/** The largest difference between two lists of one length. */
function apart(one: ArrayLike<number>, other: ArrayLike<number>): number {
  expect(one.length).toBe(other.length);
  return Array.from(one).reduce((most, value, at) => Math.max(most, Math.abs(value - (other[at] ?? NaN))), 0);
}

describe('WAV, beside another reader', () => {
  it.each([8000, 16_000, 44_100, 48_000, 96_000])('as written by the program is read by the browser to the last bit, at %d Hz', async (rateHz) => {
    const left = Float32Array.from({ length: 3000 }, (_, at) => 0.9 * Math.sin(at ** 1.3 / 7));
    const right = left.map((value, at) => -value / (1 + at / 500));
    const decoded = await decodedByBrowser(writeWav({ sampleRateHz: rateHz, channels: [left, right] }), rateHz);
    expect(decoded?.rateHz).toBe(rateHz);
    expect(decoded?.channels.map((channel, index) => apart(channel, index === 0 ? left : right))).toEqual([0, 0]);
  });

  it.each([[16, 1, 2 ** -15], [24, 1, 2 ** -23], [32, 1, 2 ** -24], [32, 3, 0]] as const)('of %d bits (format %d) is read by the program as the browser reads it', async (bits, tag, step) => {
    const count = 2400;
    const data = new Uint8Array((count * bits) / 8);
    const view = new DataView(data.buffer);
    for (let at = 0; at < count; at += 1) {
      const value = 0.8 * Math.sin(at / 5) * Math.exp(-at / 900);
      const place = (at * bits) / 8;
      if (tag === 3) view.setFloat32(place, value, true);
      else if (bits === 16) view.setInt16(place, Math.round(value * 32_767), true);
      else if (bits === 32) view.setInt32(place, Math.round(value * 2_147_483_647), true);
      else for (let byte = 0; byte < 3; byte += 1) view.setUint8(place + byte, (Math.round(value * 8_388_607) >> (8 * byte)) & 255);
    }
    const bytes = wavBytes({ bits, tag, rate: 48_000, channels: 1, data });
    const [own, decoded] = [await readRecording(bytes), await decodedByBrowser(bytes, 48_000)];
    if (!own.ok) throw new Error(JSON.stringify(own.issues));
    expect(apart(own.value.samples.channels[0] ?? [], decoded?.channels[0] ?? [])).toBeLessThanOrEqual(step);
  });
});

describe('M4A', () => {
  it('is kept whole with a copy without loss where this browser can decode it, and refused in words where it cannot', async () => {
    const file = await museum('tone.m4a');
    const decoded = await decodedByBrowser(file, MUSEUM_RATE_HZ);
    const { id } = await desk.call<{ id: string }>('POST', '/api/pianos', { name: `Recorded on a telephone, ${decoded === undefined ? 'not ' : ''}decoded`, kind: 'grand' });
    const tone = await desk.open(`/pianos/${id}/tone`);
    await tone.locator('input[type=file]').setInputFiles([{ name: 'C4.m4a', mimeType: 'audio/mp4', buffer: file }]);
    await tone.getByRole('button', { name: 'Keep 1 recording' }).click();
    if (decoded === undefined) {
      await tone.getByRole('alert').first().waitFor();
      return;
    }
    type Kept = { readonly file: { readonly hash: string; readonly format: string; readonly byteCount: number }; readonly copy: { readonly hash: string; readonly format: string } | null };
    const kept = await vi.waitFor(async () => {
      const [one] = (await desk.call<{ recordings: Kept[] }>('GET', `/api/pianos/${id}/recordings`)).recordings;
      if (one === undefined) throw new Error('not kept yet');
      return one;
    }, { timeout: 60_000, interval: 200 });
    expect(kept).toMatchObject({ file: { format: 'm4a', byteCount: file.byteLength }, copy: { format: 'wav' } });
    const copy = await readRecording(new Uint8Array(await (await fetch(`${desk.bench.url}/api/recordings/${String(kept.copy?.hash)}`)).arrayBuffer()));
    if (!copy.ok) throw new Error(JSON.stringify(copy.issues));
    expect(copy.value.samples.sampleRateHz).toBe(decoded.rateHz);
    expect(apart(copy.value.samples.channels[0] ?? [], decoded.channels[0] ?? [])).toBe(0);
    // AAC at 64 kbit/s of two tones, found at the delay that fits best: most of the sound is there.
    expect(bestFitDb(museumSound(), copy.value.samples.channels[0] ?? new Float64Array())).toBeLessThan(-20);
    await tone.context().close();
  });
});

/** What is left of a sound, in dB of it, when another at the best of some thousand delays is taken away. */
function bestFitDb(sound: Float64Array, other: ArrayLike<number>): number {
  const part = sound.subarray(500, 6500);
  const energy = part.reduce((sum, x) => sum + x * x, 0);
  let least = Infinity;
  for (let delay = -400; delay < 3000; delay += 1) least = Math.min(least, part.reduce((sum, x, at) => sum + (x - (other[at + 500 + delay] ?? 0)) ** 2, 0));
  return 10 * Math.log10(least / energy);
}
