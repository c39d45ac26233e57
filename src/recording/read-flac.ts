import { type Result, ok } from '#result';
import { type BlockDecoder, decodeBlocks } from './decode-blocks.ts';
import { holdToNumbers } from './hold-to-numbers.ts';
import { refuseCut, refuseHeader } from './issues.ts';
import { afterTag } from './kind.ts';
import { type Shape, checkShape } from './limits.ts';
import type { Decoded } from './recording.ts';

interface FlacHead {
  readonly shape: Shape;
  readonly bits: number;
}

const MAGIC_BYTES = 4;
const BLOCK_HEAD_BYTES = 4;
const STREAM_INFO_BYTES = 34;

/**
 * What the block STREAMINFO of a FLAC file says, held to the limits. A length of 0 means not known.
 * @source RFC-9639, section 8.2
 */
export function flacHeadOf(bytes: Uint8Array): Result<FlacHead> {
  const from = afterTag(bytes) + MAGIC_BYTES + BLOCK_HEAD_BYTES;
  const type = (bytes[from - BLOCK_HEAD_BYTES] ?? 0) & 0x7f;
  if (bytes.length < from + STREAM_INFO_BYTES) return refuseHeader('STREAMINFO', `${String(Math.max(0, bytes.length - from))} bytes`, `${String(STREAM_INFO_BYTES)} bytes`);
  if (type !== 0) return refuseHeader('STREAMINFO', `a block of kind ${String(type)}`, 'first of all blocks');
  const view = new DataView(bytes.buffer, bytes.byteOffset + from, STREAM_INFO_BYTES);
  const packed = view.getBigUint64(10);
  const part = (shift: bigint, bits: bigint): number => Number((packed >> shift) & ((1n << bits) - 1n));
  const total = part(0n, 36n);
  const checked = checkShape({ sampleRateHz: part(44n, 20n), channels: part(41n, 3n) + 1, frames: total === 0 ? null : total });
  return checked.ok ? ok({ shape: checked.value, bits: part(36n, 5n) + 1 }) : checked;
}

/** Reads a FLAC file. Frames carry checksums: one that fails is missing at the end, and the file refused. */
export async function readFlac(bytes: Uint8Array): Promise<Result<Decoded>> {
  const head = flacHeadOf(bytes);
  if (!head.ok) return head;
  const { shape, bits } = head.value;
  const samples = await decodeBlocks(bytes.subarray(afterTag(bytes)), openDecoder, shape);
  if (!samples.ok) return samples;
  const { sampleRateHz, channels: [first] } = samples.value;
  const frames = first?.length ?? 0;
  if (shape.frames !== null && frames !== shape.frames) return refuseCut(frames / sampleRateHz, shape.frames / sampleRateHz);
  toFullScale(samples.value.channels, bits);
  return holdToNumbers({ samples: samples.value, coding: 'integer', bits });
}

/** The decoder divides whole numbers by 2^(bits − 1) − 1. They are found again, exactly up to 24 bits, and divided by 2^(bits − 1) as in a WAV file. */
function toFullScale(channels: readonly Float64Array[], bits: number): void {
  const full = 2 ** (bits - 1);
  for (const list of channels) for (let frame = 0; frame < list.length; frame += 1) list[frame] = Math.round((list[frame] ?? 0) * (full - 1)) / full;
}

/** The decoder prints what is wrong with a frame and goes on: it is made to end instead, by the step in which it puts the error into words. */
async function openDecoder(): Promise<BlockDecoder> {
  const { FLACDecoder } = await import('@wasm-audio-decoders/flac');
  const decoder = new FLACDecoder();
  await decoder.ready;
  const { _common: common } = (decoder as unknown as { readonly _decoder: { readonly _common: { codeToString: (at: number) => string } } })._decoder;
  const words = common.codeToString;
  common.codeToString = (at) => {
    throw new Error(words(at));
  };
  return decoder;
}
