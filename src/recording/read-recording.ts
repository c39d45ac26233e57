import { type Result, map, refuse } from '#result';
import { refuseFile } from './issues.ts';
import { kindOf } from './kind.ts';
import { levelOf } from './levels.ts';
import { MAX_RECORDING_BYTES, recordingTooLarge } from './limits.ts';
import { readWav } from './read-wav.ts';
import type { Decoded, Recording, RecordingKind } from './recording.ts';

/** The reader of each kind of file. A decoder is fetched when the first file of its kind is read. */
const readers: Readonly<Partial<Record<RecordingKind, (bytes: Uint8Array) => Promise<Result<Decoded>>>>> = {
  wav: (bytes) => Promise.resolve(readWav(bytes)),
};

/**
 * Reads a recording: its kind by its first bytes, its header held to the limits before anything is decoded, then its samples.
 * Never throws for what a file holds: what is wrong comes back as issues, with `header.*` where a header is at fault.
 */
export async function readRecording(bytes: Uint8Array): Promise<Result<Recording>> {
  if (bytes.length > MAX_RECORDING_BYTES) return refuse(recordingTooLarge(bytes.length));
  const kind = kindOf(bytes);
  if (!kind.ok) return kind;
  const read = readers[kind.value];
  if (read === undefined) return refuseFile('recordingKind', kind.value, 'WAV');
  return map(await read(bytes), (decoded) => recordingOf(kind.value, decoded));
}

function recordingOf(kind: RecordingKind, { samples, coding, bits }: Decoded): Recording {
  const { sampleRateHz, channels } = samples;
  const frames = channels[0]?.length ?? 0;
  const levels = channels.map((channel) => levelOf(channel, bits));
  return { samples, facts: { kind, coding, bits, sampleRateHz, channels: channels.length, frames, durationS: frames / sampleRateHz, levels } };
}
