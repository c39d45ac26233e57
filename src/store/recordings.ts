import type { KeptRecording, RecordingFormat } from '#instrument';
import { MAX_RECORDING_BYTES, isAac, kindOf, recordingTooLarge } from '#recording';
import { type ByteRange, type ReadRecording, StoreFailure } from './bench-store.ts';
import type { Blobs } from './blobs.ts';
import { accepted } from './check.ts';

const HEAD_BYTES = 16;
const REFUSED = 'The recording cannot be kept.';

/** Keeps a sound file whole, as its bytes come. @throws StoreFailure `refused` for what is no sound file, empty or too large. */
export async function keepRecording(recordings: Blobs, pieces: AsyncIterable<Uint8Array>): Promise<KeptRecording> {
  let head = new Uint8Array();
  const heard = async function* (): AsyncIterable<Uint8Array> {
    for await (const piece of pieces) {
      if (head.byteLength < HEAD_BYTES) {
        head = joined(head, piece.subarray(0, HEAD_BYTES));
        if (head.byteLength >= HEAD_BYTES) checkedFormat(head);
      }
      yield piece;
    }
    checkedFormat(head);
  };
  const kept = await recordings.keepStream(heard(), refuseAbove(MAX_RECORDING_BYTES));
  return { ...kept, format: checkedFormat(head) };
}

/** The bytes of a recording, all or a part. @throws StoreFailure `notFound`. */
export async function readRecording(recordings: Blobs, hash: string, range?: ByteRange): Promise<ReadRecording> {
  const byteCount = recordings.sizeOf(hash);
  let head = new Uint8Array();
  for await (const piece of recordings.readStream(hash, { start: 0, end: HEAD_BYTES - 1 })) head = joined(head, piece);
  return { format: checkedFormat(head), byteCount, pieces: recordings.readStream(hash, range) };
}

function refuseAbove(limit: number): (byteCount: number) => void {
  return (byteCount) => {
    if (byteCount > limit) throw new StoreFailure('refused', 'The recording is too large. Cut a long take in parts, or send it as FLAC.', [recordingTooLarge(byteCount, limit)]);
  };
}

function joined(first: Uint8Array, second: Uint8Array): Uint8Array<ArrayBuffer> {
  const both = new Uint8Array(first.byteLength + second.byteLength);
  both.set(first);
  both.set(second, first.byteLength);
  return both;
}

/** What kind of sound file begins so; whether all of it can be read is found out by reading it. */
function checkedFormat(head: Uint8Array): RecordingFormat {
  if (isAac(head)) return 'm4a';
  return accepted(kindOf(head), REFUSED);
}
