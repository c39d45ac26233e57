import { type Result, andThen } from '#result';
import { type BlockDecoder, decodeBlocks } from './decode-blocks.ts';
import { holdToNumbers } from './hold-to-numbers.ts';
import { checkShape } from './limits.ts';
import { type Mp3Stream, mp3StreamOf } from './mp3-frames.ts';
import type { Decoded } from './recording.ts';

/** The frames of an MP3 file, held to the limits. */
export function mp3HeadOf(bytes: Uint8Array): Result<Mp3Stream> {
  return andThen(mp3StreamOf(bytes), (stream) => {
    const checked = checkShape(stream);
    return checked.ok ? { ok: true, value: stream } : checked;
  });
}

/** Reads an MP3 file. What an encoder added before and behind is taken off where the file says how much that is. */
export async function readMp3(bytes: Uint8Array): Promise<Result<Decoded>> {
  const head = mp3HeadOf(bytes);
  if (!head.ok) return head;
  const { from, to, sampleRateHz, channels } = head.value;
  const samples = await decodeBlocks(bytes.subarray(from, to), openMp3Decoder, { sampleRateHz, channels, frames: null });
  return samples.ok ? holdToNumbers({ samples: samples.value, coding: 'lossy', bits: null }) : samples;
}

/**
 * The decoder tries a block again and again after an error, for ever when the error stays: it is made to end with the
 * first by the step in which it puts the error into words. A test holds the library to that.
 */
export async function openMp3Decoder(): Promise<BlockDecoder> {
  const { MPEGDecoder } = await import('mpg123-decoder');
  const decoder = new MPEGDecoder();
  await decoder.ready;
  return Object.assign(decoder, {
    _getErrorMessage: (code: number): never => {
      throw new Error(`MPEG error ${String(code)}`);
    },
  });
}
