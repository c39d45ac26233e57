import { type Result, andThen, ok } from '#result';
import { holdToNumbers } from './hold-to-numbers.ts';
import { refuseCut } from './issues.ts';
import { type Shape, checkShape } from './limits.ts';
import type { Decoded } from './recording.ts';
import { type WavChunks, wavChunksOf } from './wav-chunks.ts';
import { type WavFormat, wavFormatOf } from './wav-format.ts';

interface WavHead {
  readonly chunks: WavChunks;
  readonly format: WavFormat;
  readonly shape: Shape;
}

/** What the header of a WAV file says, held to the limits and to the length of the file. */
export function wavHeadOf(bytes: Uint8Array): Result<WavHead> {
  return andThen(wavChunksOf(bytes), (chunks) =>
    andThen(wavFormatOf(chunks.format), (format) => {
      const bytesPerFrame = format.bytesPerSample * format.channels;
      const says = chunks.dataSays ?? chunks.data.length;
      const frames = bytesPerFrame === 0 ? 0 : Math.floor(says / bytesPerFrame);
      return andThen(checkShape({ sampleRateHz: format.sampleRateHz, channels: format.channels, frames }), (shape) =>
        says > chunks.data.length ? refuseCut(chunks.data.length / bytesPerFrame / format.sampleRateHz, frames / format.sampleRateHz) : ok({ chunks, format, shape }),
      );
    }),
  );
}

/** Reads a WAV file: whole numbers become value / 2^(bits − 1), 8 bits with their middle at 128; floating point stays as it is. */
export function readWav(bytes: Uint8Array): Result<Decoded> {
  return andThen(wavHeadOf(bytes), ({ chunks: { data }, format, shape }) => {
    const { coding, bits, bytesPerSample, channels, sampleRateHz } = format;
    const frames = shape.frames ?? 0;
    const valueAt = readerOf(new DataView(data.buffer, data.byteOffset, data.byteLength), format);
    const lists = Array.from({ length: channels }, (_, channel) => {
      const list = new Float64Array(frames);
      for (let frame = 0, at = channel * bytesPerSample; frame < frames; frame += 1, at += channels * bytesPerSample) list[frame] = valueAt(at);
      return list;
    });
    const decoded: Decoded = { samples: { sampleRateHz, channels: lists }, coding, bits };
    return coding === 'float' ? holdToNumbers(decoded) : ok(decoded);
  });
}

function readerOf(view: DataView, { coding, bytesPerSample }: WavFormat): (at: number) => number {
  if (coding === 'float') return bytesPerSample === 8 ? (at) => view.getFloat64(at, true) : (at) => view.getFloat32(at, true);
  switch (bytesPerSample) {
    case 1:
      return (at) => (view.getUint8(at) - 128) / 2 ** 7;
    case 2:
      return (at) => view.getInt16(at, true) / 2 ** 15;
    case 3:
      return (at) => (view.getInt8(at + 2) * 2 ** 16 + view.getUint16(at, true)) / 2 ** 23;
    default:
      return (at) => view.getInt32(at, true) / 2 ** 31;
  }
}
