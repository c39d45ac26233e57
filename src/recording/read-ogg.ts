import type { Result } from '#result';
import { decodeBlocks } from './decode-blocks.ts';
import { holdToNumbers } from './hold-to-numbers.ts';
import { refuseFile, refuseHeader } from './issues.ts';
import { type Shape, checkShape } from './limits.ts';
import { oggStreamOf } from './ogg-pages.ts';
import type { Decoded } from './recording.ts';

/** Codings an OGG file may hold beside Vorbis, by the first letters of their first packet. */
const UNREAD = [['OpusHead', 'Opus'], ['\u007fFLAC', 'FLAC in OGG'], ['Speex   ', 'Speex'], ['\u0080theora', 'Theora']] as const;

const IDENTIFICATION_BYTES = 30;

/**
 * What the identification header of an OGG Vorbis file and its last page say, held to the limits.
 * @source VORBIS-I, section 4.2.2
 */
export function oggHeadOf(bytes: Uint8Array): Result<Shape> {
  const stream = oggStreamOf(bytes, (packet) => (packet.length >= 16 ? viewOf(packet).getUint32(12, true) : 0));
  if (!stream.ok) return stream;
  const { firstPacket, granules } = stream.value;
  const begins = String.fromCharCode(...firstPacket.subarray(0, 8));
  if (!begins.startsWith('\u0001vorbis')) return refuseFile('recordingCodec', UNREAD.find(([word]) => begins.startsWith(word))?.[1] ?? 'something unknown in OGG', 'Vorbis', 'header.codec');
  if (firstPacket.length < IDENTIFICATION_BYTES) return refuseHeader('identification', `${String(firstPacket.length)} bytes`, `${String(IDENTIFICATION_BYTES)} bytes`);
  const view = viewOf(firstPacket);
  return checkShape({ sampleRateHz: view.getUint32(12, true), channels: view.getUint8(11), frames: granules });
}

/** Reads an OGG Vorbis file. */
export async function readOgg(bytes: Uint8Array): Promise<Result<Decoded>> {
  const shape = oggHeadOf(bytes);
  if (!shape.ok) return shape;
  const samples = await decodeBlocks(bytes, openDecoder, shape.value);
  return samples.ok ? holdToNumbers({ samples: samples.value, coding: 'lossy', bits: null }) : samples;
}

async function openDecoder() {
  const { OggVorbisDecoder } = await import('@wasm-audio-decoders/ogg-vorbis');
  const decoder = new OggVorbisDecoder();
  await decoder.ready;
  return decoder;
}

function viewOf(bytes: Uint8Array): DataView {
  return new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
}
