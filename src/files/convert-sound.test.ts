import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { readRecording } from '#recording';
import { describe, expect, it } from 'vitest';
import { convertSound } from './convert-sound.ts';

const m4a = fileURLToPath(new URL('../recording/museum/tone.m4a', import.meta.url));
const LIMITS = { mostBytes: 10_000_000, mostMs: 60_000 };
const hasFfmpeg = spawnSync('ffmpeg', ['-version']).status === 0;

/** The two tones the file was made of; see its museum’s README. */
const tones = (at: number): number => 0.5 * Math.sin((2 * Math.PI * 440 * at) / 16_000) * Math.exp((-2 * at) / 16_000) + 0.25 * Math.sin((2 * Math.PI * 881 * at) / 16_000) * Math.exp((-4 * at) / 16_000);

/** Where ffmpeg is not installed these are not there at all; the test below says what is said then. */
if (hasFfmpeg) describe('M4A by an installed ffmpeg', () => {
  it('comes out as WAV with the sound that was put in', async () => {
    const converted = await convertSound(m4a, LIMITS);
    const read = converted.ok ? await readRecording(converted.value) : converted;
    if (!read.ok) throw new Error(JSON.stringify(read.issues));
    const { sampleRateHz, channels: [channel = new Float64Array()] } = read.value.samples;
    expect(sampleRateHz).toBe(16_000);
    const part = Array.from({ length: 6000 }, (_, at) => at + 500);
    const energy = part.reduce((sum, at) => sum + tones(at) ** 2, 0);
    const left = Array.from({ length: 1200 }, (_, delay) => part.reduce((sum, at) => sum + (tones(at) - (channel[at + delay] ?? 0)) ** 2, 0));
    expect(10 * Math.log10(Math.min(...left) / energy)).toBeLessThan(-20);
  });

  it('is refused in words where it holds no sound, is too large once unpacked, or is not there', async () => {
    const source = fileURLToPath(import.meta.url);
    expect(await convertSound(source, LIMITS)).toMatchObject({ ok: false, issues: [{ params: { reason: 'recordingConvert' } }] });
    expect(await convertSound(m4a, { ...LIMITS, mostBytes: 1000 })).toMatchObject({ ok: false, issues: [{ params: { reason: 'recordingConvertLarge' } }] });
    expect(await convertSound(`${m4a}.gone`, LIMITS)).toMatchObject({ ok: false, issues: [{ params: { reason: 'recordingConvert' } }] });
  });
});

it('says so where no converter is installed', async () => {
  expect(await convertSound(m4a, { ...LIMITS, command: 'no-such-converter-here' })).toMatchObject({ ok: false, issues: [{ params: { reason: 'recordingConverter' } }] });
});
