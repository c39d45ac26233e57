import { type Result, ok } from '#result';
import { refuseFile } from './issues.ts';
import type { RecordingKind } from './recording.ts';

const ALLOWED = 'WAV, FLAC, OGG Vorbis or MP3';

/** Kinds of file known by their first bytes and not read here, each by its own name. */
const UNREAD: readonly (readonly [name: string, is: (bytes: Uint8Array) => boolean])[] = [
  ['M4A (AAC)', (bytes) => wordAt(bytes, 4) === 'ftyp' || isAdts(bytes)],
  ['AIFF', (bytes) => wordAt(bytes, 0) === 'FORM'],
  ['WebM', (bytes) => bytes[0] === 0x1a && bytes[1] === 0x45 && bytes[2] === 0xdf && bytes[3] === 0xa3],
  ['big-endian WAV (RIFX)', (bytes) => wordAt(bytes, 0) === 'RIFX'],
  ['WMA', (bytes) => bytes[0] === 0x30 && bytes[1] === 0x26 && bytes[2] === 0xb2 && bytes[3] === 0x75],
];

/** The kind of a recording by its first bytes, whatever its name says; another kind is refused by name. */
export function kindOf(bytes: Uint8Array): Result<RecordingKind> {
  const from = afterTag(bytes);
  const word = wordAt(bytes, from);
  if (['RIFF', 'RF64', 'BW64'].includes(word) && wordAt(bytes, from + 8) === 'WAVE') return ok('wav');
  if (word === 'fLaC') return ok('flac');
  if (word === 'OggS') return ok('ogg');
  const unread = UNREAD.find(([, is]) => is(bytes))?.[0];
  if (unread !== undefined) return refuseFile('recordingKind', unread, ALLOWED, '', { unread });
  if (from > 0 || isMpegSync(bytes, from)) return ok('mp3');
  return refuseFile('recordingKind', bytes.length === 0 ? 'an empty file' : `bytes that begin ${hexOf(bytes.subarray(0, 8))}`, ALLOWED);
}

/** True for MPEG-4 audio, which a browser or an installed converter reads. */
export function isAac(bytes: Uint8Array): boolean {
  return wordAt(bytes, 4) === 'ftyp' || isAdts(bytes);
}

/** Where the recording begins behind an ID3v2 tag, which may stand before any kind: 10 bytes and a length of four times 7 bits. */
export function afterTag(bytes: Uint8Array): number {
  if (wordAt(bytes, 0).slice(0, 3) !== 'ID3' || bytes.length < 10) return 0;
  const length = [6, 7, 8, 9].reduce((sum, at) => sum * 128 + ((bytes[at] ?? 0) & 0x7f), 0);
  return 10 + length + (((bytes[5] ?? 0) & 0x10) === 0 ? 0 : 10);
}

/** Eleven set bits, and a layer: zero would be AAC. */
function isMpegSync(bytes: Uint8Array, at: number): boolean {
  return bytes[at] === 0xff && ((bytes[at + 1] ?? 0) & 0xe0) === 0xe0 && ((bytes[at + 1] ?? 0) & 0x06) !== 0;
}

function isAdts(bytes: Uint8Array): boolean {
  return bytes[0] === 0xff && ((bytes[1] ?? 0) & 0xf6) === 0xf0;
}

function wordAt(bytes: Uint8Array, at: number): string {
  return String.fromCharCode(...bytes.subarray(at, at + 4));
}

function hexOf(bytes: Uint8Array): string {
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join(' ');
}
