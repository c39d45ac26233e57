import { type Result, ok } from '#result';
import { refuseFile, refuseHeader } from './issues.ts';

/** What the format chunk of a WAV file says. */
export interface WavFormat {
  readonly coding: 'integer' | 'float';
  /** Bits that count. */
  readonly bits: number;
  /** Bytes one sample takes. */
  readonly bytesPerSample: number;
  readonly channels: number;
  readonly sampleRateHz: number;
}

const INTEGER = 1;
const FLOAT = 3;
const EXTENSIBLE = 0xfffe;
/** Bytes 2 to 15 of the identifier under which an extensible format names a plain one. */
const PLAIN_TAIL = '000000001000800000aa00389b71';
const BYTES_ALLOWED = { integer: [1, 2, 3, 4], float: [4, 8] } as const;

/** Reads the format chunk: PCM of 8 to 32 bits, floating point of 32 or 64, plain or as WAVE_FORMAT_EXTENSIBLE. */
export function wavFormatOf(chunk: DataView): Result<WavFormat> {
  if (chunk.byteLength < 16) return refuseHeader('fmt', `${String(chunk.byteLength)} bytes`, 'at least 16 bytes');
  const tag = tagOf(chunk);
  if (tag !== INTEGER && tag !== FLOAT) return refuseFile('recordingCodec', `WAV format ${String(tag)}`, 'PCM or floating point', 'header.formatTag');
  const coding = tag === FLOAT ? 'float' : 'integer';
  const channels = chunk.getUint16(2, true);
  const blockBytes = chunk.getUint16(12, true);
  const container = chunk.getUint16(14, true);
  const bytesPerSample = Math.ceil(container / 8);
  if (!BYTES_ALLOWED[coding].some((allowed) => allowed === bytesPerSample)) return refuseHeader('bitsPerSample', container, coding === 'float' ? '32 or 64' : '8, 16, 24 or 32');
  if (blockBytes !== channels * bytesPerSample) return refuseHeader('blockAlign', blockBytes, `${String(channels * bytesPerSample)}, for ${String(channels)} channels of ${String(container)} bits`);
  return ok({ coding, bits: validBits(chunk, container), bytesPerSample, channels, sampleRateHz: chunk.getUint32(4, true) });
}

function tagOf(chunk: DataView): number {
  const tag = chunk.getUint16(0, true);
  if (tag !== EXTENSIBLE || chunk.byteLength < 40) return tag;
  const tail = Array.from({ length: 14 }, (_, index) => chunk.getUint8(26 + index).toString(16).padStart(2, '0')).join('');
  return tail === PLAIN_TAIL ? chunk.getUint16(24, true) : tag;
}

/** Bits that count, of those a sample takes: an extensible format may leave some empty, at the lower end. */
function validBits(chunk: DataView, container: number): number {
  const valid = chunk.getUint16(0, true) === EXTENSIBLE && chunk.byteLength >= 20 ? chunk.getUint16(18, true) : container;
  return valid >= 1 && valid <= container ? valid : container;
}
