import { type Result, ok } from '#result';
import { refuseCut, refuseDamaged, refuseFile, refuseHeader } from './issues.ts';
import { afterTag } from './kind.ts';

/** The frames of an MP3 file: where they stand, and what each of them says alike. */
export interface Mp3Stream {
  readonly from: number;
  readonly to: number;
  readonly sampleRateHz: number;
  readonly channels: number;
  /** Samples of one channel, those an encoder added before and behind included. */
  readonly frames: number;
}

interface FrameHead {
  readonly bytes: number;
  readonly sampleRateHz: number;
  readonly channels: number;
  readonly samples: number;
}

const MPEG1_KBPS = [0, 32, 40, 48, 56, 64, 80, 96, 112, 128, 160, 192, 224, 256, 320];
const MPEG2_KBPS = [0, 8, 16, 24, 32, 40, 48, 56, 64, 80, 96, 112, 128, 144, 160];
const MPEG1_RATES_HZ = [44_100, 48_000, 32_000];
/** How far into a file the first frame is looked for. */
const SEARCH_BYTES = 65_536;

/**
 * Walks over the frames of an MPEG layer III file from head to head. All must say one rate; where no frame stands where
 * one must begin the file is damaged, except for a tag at its end.
 * @source ISO-11172-3, 2.4.1.3 and 2.4.2.3
 */
export function mp3StreamOf(bytes: Uint8Array): Result<Mp3Stream> {
  const from = firstFrame(bytes);
  const head = from === undefined ? undefined : headAt(bytes, from);
  if (from === undefined || head === undefined) return refuseHeader('frame', 'none found', 'a frame of MPEG layer III');
  const { sampleRateHz } = head;
  let at = from;
  let frames = 0;
  let channels = 1;
  while (at < bytes.length && !isEndTag(bytes, at)) {
    const next = headAt(bytes, at);
    if (next === undefined) return refuseDamaged(frames / sampleRateHz, 'no frame where one must begin');
    if (next.sampleRateHz !== sampleRateHz) return refuseFile('recordingChanges', `the rate goes from ${String(sampleRateHz)} to ${String(next.sampleRateHz)} Hz`, 'one rate', 'sampleRateHz');
    if (at + next.bytes > bytes.length) return refuseCut(frames / sampleRateHz);
    at += next.bytes;
    frames += next.samples;
    channels = Math.max(channels, next.channels);
  }
  return ok({ from, to: at, sampleRateHz, channels, frames });
}

/** The first frame that is followed by a second, or by the end: eleven set bits alone may be anything. */
function firstFrame(bytes: Uint8Array): number | undefined {
  const start = afterTag(bytes);
  for (let at = start; at < Math.min(bytes.length, start + SEARCH_BYTES); at += 1) {
    const head = headAt(bytes, at);
    if (head !== undefined && (at + head.bytes >= bytes.length || headAt(bytes, at + head.bytes) !== undefined || isEndTag(bytes, at + head.bytes))) return at;
  }
  return undefined;
}

function headAt(bytes: Uint8Array, at: number): FrameHead | undefined {
  const [sync = 0, second = 0, third = 0, fourth = 0] = bytes.subarray(at, at + 4);
  const version = (second >> 3) & 3;
  if (at + 4 > bytes.length || sync !== 0xff || (second & 0xe0) !== 0xe0 || version === 1 || (second & 0x06) !== 0x02) return undefined;
  const isMpeg1 = version === 3;
  const kbps = (isMpeg1 ? MPEG1_KBPS : MPEG2_KBPS)[third >> 4];
  const rate = MPEG1_RATES_HZ[(third >> 2) & 3];
  if (kbps === undefined || kbps === 0 || rate === undefined) return undefined;
  const sampleRateHz = isMpeg1 ? rate : version === 2 ? rate / 2 : rate / 4;
  const samples = isMpeg1 ? 1152 : 576;
  const bytesOfFrame = Math.floor((samples * kbps * 125) / sampleRateHz) + ((third >> 1) & 1);
  return { bytes: bytesOfFrame, sampleRateHz, channels: fourth >> 6 === 3 ? 1 : 2, samples };
}

/** A tag behind the last frame: ID3v1, APE or Lyrics3, or nothing but zeros. */
function isEndTag(bytes: Uint8Array, at: number): boolean {
  const word = String.fromCharCode(...bytes.subarray(at, at + 8));
  return word.startsWith('TAG') || word === 'APETAGEX' || word.startsWith('LYRICSBE') || word.startsWith('ID3') || bytes.subarray(at).every((byte) => byte === 0);
}
