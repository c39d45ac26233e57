import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readRecording, writeWav } from './index.ts';
import { type WavDraft, little, wavBytes } from './testing/wav-bytes.ts';

const channelsOf = async (bytes: Uint8Array) => {
  const read = await readRecording(bytes);
  return read.ok ? read.value.samples.channels.map((channel) => [...channel]) : read.issues.map(({ code, path, params }) => [code, path, params?.['reason']].join(' '));
};
const floats = (...values: readonly number[]): Uint8Array => new Uint8Array(Float32Array.from(values).buffer);

describe('a WAV file that is written and read', () => {
  it('gives every figure of 32 bits back as it was', async () => {
    const rows = fc.integer({ min: 1, max: 8 }).chain((count) => fc.integer({ min: 1, max: 50 }).chain((length) => fc.array(fc.float32Array({ minLength: length, maxLength: length, noNaN: true, noDefaultInfinity: true, min: -1000, max: 1000 }), { minLength: count, maxLength: count })));
    await fc.assert(fc.asyncProperty(rows, fc.integer({ min: 8000, max: 384_000 }), async (channels, sampleRateHz) => {
      const read = await readRecording(writeWav({ sampleRateHz, channels }));
      if (!read.ok) throw new Error(JSON.stringify(read.issues));
      expect(read.value.samples).toEqual({ sampleRateHz, channels: channels.map((channel) => Float64Array.from(channel)) });
      expect(read.value.facts).toMatchObject({ kind: 'wav', coding: 'float', bits: 32, sampleRateHz, channels: channels.length, frames: channels[0]?.length });
    }));
  });

  it('is laid out as the standard has it', () => {
    // from memory: RIFF/WAVE of floating point, `fmt ` of 18 bytes, `fact`, `data`
    const bytes = writeWav({ sampleRateHz: 44_100, channels: [Float32Array.of(1), Float32Array.of(-1)] });
    const words = new TextDecoder('latin1').decode(bytes);
    expect([words.slice(0, 4), words.slice(8, 16), words.slice(38, 42), words.slice(50, 54)]).toEqual(['RIFF', 'WAVEfmt ', 'fact', 'data']);
    expect([...bytes.slice(4, 8), ...bytes.slice(54, 58)]).toEqual([58, 0, 0, 0, 8, 0, 0, 0]);
    expect(() => writeWav({ sampleRateHz: 44_100, channels: [new Float32Array(2), new Float32Array(1)] })).toThrow(RangeError);
  });
});

describe('a WAV file', () => {
  it.each<readonly [string, WavDraft, readonly number[][]]>([
    ['8 bits, unsigned', { bits: 8, data: Uint8Array.of(0, 128, 255, 192) }, [[-1, 0, 127 / 128, 0.5]]],
    ['16 bits', { data: Uint8Array.of(0, 0x80, 0xff, 0x7f, 1, 0) }, [[-1, 32_767 / 32_768, 1 / 32_768]]],
    ['24 bits', { bits: 24, blockAlign: 3, data: Uint8Array.of(0, 0, 0x80, 0xff, 0xff, 0x7f, 0xff, 0xff, 0xff) }, [[-1, 1 - 2 ** -23, -(2 ** -23)]]],
    ['32 bits', { bits: 32, data: Uint8Array.of(0, 0, 0, 0x80, 0, 0, 0, 0x40) }, [[-1, 0.5]]],
    ['32 bits of floating point', { tag: 3, bits: 32, data: floats(1.5, -0.25) }, [[1.5, -0.25]]],
    ['64 bits of floating point', { tag: 3, bits: 64, data: new Uint8Array(Float64Array.of(0.1, -1e-300).buffer) }, [[0.1, -1e-300]]],
    ['two channels', { channels: 2, data: Uint8Array.of(0, 0x40, 0, 0xc0, 0, 0x20, 0, 0) }, [[0.5, 0.25], [-0.5, 0]]],
    ['20 bits in 24, extensible', { bits: 24, blockAlign: 3, extensible: { tag: 1, validBits: 20 }, data: Uint8Array.of(0, 0, 0x40) }, [[0.5]]],
    ['extensible floating point', { bits: 32, extensible: { tag: 3, validBits: 32 }, data: floats(0.75) }, [[0.75]]],
    ['an odd chunk before the data', { before: [['LIST', Uint8Array.of(1, 2, 3)]], data: Uint8Array.of(0, 0x40) }, [[0.5]]],
    ['a chunk behind the data', { data: Uint8Array.of(0, 0x40), after: Uint8Array.of(0x4c, 0x49, 0x53, 0x54, 2, 0, 0, 0, 9, 9) }, [[0.5]]],
    ['a length left open by a pipe', { data: Uint8Array.of(0, 0x40), dataSays: 0xffff_ffff, riffSays: 0xffff_ffff }, [[0.5]]],
    ['a length left open by a recorder switched off', { data: Uint8Array.of(0, 0x40), dataSays: 0, riffSays: 0 }, [[0.5]]],
    ['RF64, its length in ds64', { riffId: 'RF64', data: Uint8Array.of(0, 0x40, 9, 9), dataSays: 0xffff_ffff, riffSays: 0xffff_ffff, before: [['ds64', new Uint8Array([...little(0, 8), ...little(2, 8), ...little(1, 8), ...little(0, 4)])]] }, [[0.5]]],
    ['half a frame at its end', { channels: 2, data: Uint8Array.of(0, 0x40, 0, 0x20, 7) }, [[0.5], [0.25]]],
  ])('is read: %s', async (_, draft, channels) => {
    expect(await channelsOf(wavBytes(draft))).toEqual(channels);
  });

  it.each<readonly [string, Uint8Array, readonly string[]]>([
    ['1 Hz', wavBytes({ rate: 1 }), ['range sampleRateHz recordingRate']],
    ['10 MHz', wavBytes({ rate: 10_000_000 }), ['range sampleRateHz recordingRate']],
    ['64 channels', wavBytes({ channels: 64, data: new Uint8Array(128) }), ['range channels recordingChannels']],
    ['no channel', wavBytes({ channels: 0 }), ['range channels recordingChannels', 'length durationS recordingEmpty']],
    ['no samples', wavBytes({ data: new Uint8Array() }), ['length durationS recordingEmpty']],
    ['three hours announced', wavBytes({ bits: 8, rate: 8000, dataSays: 3 * 3600 * 8000 }), ['length durationS recordingLong']],
    ['everything wrong at once', wavBytes({ rate: 1, channels: 64, data: new Uint8Array() }), ['range sampleRateHz recordingRate', 'range channels recordingChannels', 'length durationS recordingEmpty']],
    ['more announced than there is', wavBytes({ dataSays: 4_000_000 }), ['format durationS recordingCut']],
    ['frames of another length than channels and bits make', wavBytes({ blockAlign: 7 }), ['format header.blockAlign recordingHeader']],
    ['12 bytes a sample', wavBytes({ bits: 96 }), ['format header.bitsPerSample recordingHeader']],
    ['a telephone coding', wavBytes({ tag: 7, bits: 8 }), ['format header.formatTag recordingCodec']],
    ['no format', wavBytes().subarray(0, 12), ['format header.data recordingHeader']],
    ['a format of 4 bytes', Uint8Array.from([...wavBytes().subarray(0, 16), 4, 0, 0, 0, 1, 0, 1, 0, ...wavBytes().subarray(36)]), ['format header.fmt recordingHeader']],
    ['data before the format', Uint8Array.from([...wavBytes().subarray(0, 12), ...wavBytes().subarray(36), ...wavBytes().subarray(12, 36)]), ['format header.fmt recordingHeader']],
    ['a sample that is no number', wavBytes({ tag: 3, bits: 32, channels: 2, data: floats(0, 0, 0, NaN) }), ['format channels[1][1] recordingValue']],
    ['an infinite sample', wavBytes({ tag: 3, bits: 32, data: floats(0, -Infinity) }), ['format channels[0][1] recordingValue']],
    ['a level nothing reaches', wavBytes({ tag: 3, bits: 32, data: floats(3e38) }), ['format channels[0][0] recordingValue']],
    ['chunk after chunk and no end', Uint8Array.from({ length: 400_000 }, (_, at) => (at < 12 ? (wavBytes()[at] ?? 0) : 0)), ['format header.data recordingHeader']],
  ])('is refused by name: %s', async (_, bytes, issues) => {
    expect(await channelsOf(bytes)).toEqual(issues);
  });

  it('is looked at for level, offset and clipping', async () => {
    const full = [0xff, 0x7f];
    const read = await readRecording(wavBytes({ data: Uint8Array.from([...full, ...full, ...full, 0, 0x40, ...full, ...full, 0, 0x80, 0, 0x80, 0, 0x80, 0, 0x80]) }));
    const sum = (5 * 32_767) / 32_768 + 0.5 - 4;
    expect(read).toMatchObject({ ok: true, value: { facts: { levels: [{ peak: 1, clippedRuns: 2 }] } } });
    expect(read.ok ? read.value.facts.levels[0]?.dcOffset : NaN).toBeCloseTo(sum / 10, 12);
    const constant = await readRecording(wavBytes({ data: new Uint8Array(200).fill(0x20) }));
    expect(constant).toMatchObject({ ok: true, value: { facts: { levels: [{ clippedRuns: 0, dcOffset: 0x2020 / 32_768 }] } } });
  });
});
