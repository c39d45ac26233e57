import { type Result, map, refuse } from '#result';
import { kindOf } from './kind.ts';
import { levelOf } from './levels.ts';
import { MAX_RECORDING_BYTES, recordingTooLarge } from './limits.ts';
import { readFlac } from './read-flac.ts';
import { readMp3 } from './read-mp3.ts';
import { readOgg } from './read-ogg.ts';
import { readWav } from './read-wav.ts';
import type { Decoded, Recording, RecordingKind } from './recording.ts';

/** The reader of each kind of file. A decoder is fetched when the first file of its kind is read. */
const readers: Readonly<Record<RecordingKind, (bytes: Uint8Array) => Promise<Result<Decoded>>>> = {
  wav: (bytes) => Promise.resolve(readWav(bytes)),
  flac: readFlac,
  ogg: readOgg,
  mp3: readMp3,
};

/**
 * Reads a recording: its kind by its first bytes, its header held to the limits before anything is decoded, then its samples.
 * Never throws for what a file holds: what is wrong comes back as issues, with `header.*` where a header is at fault.
 */
export async function readRecording(bytes: Uint8Array): Promise<Result<Recording>> {
  if (bytes.length > MAX_RECORDING_BYTES) return refuse(recordingTooLarge(bytes.length));
  const kind = kindOf(bytes);
  if (!kind.ok) return kind;
  return map(await readers[kind.value](bytes), (decoded) => recordingOf(kind.value, decoded));
}

function recordingOf(kind: RecordingKind, { samples, coding, bits }: Decoded): Recording {
  const { sampleRateHz, channels } = samples;
  const frames = channels[0]?.length ?? 0;
  const levels = channels.map((channel) => levelOf(channel, bits));
  return { samples, facts: { kind, coding, bits, sampleRateHz, channels: channels.length, frames, durationS: frames / sampleRateHz, levels } };
}
