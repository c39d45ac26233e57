import { type Issue, type Result, ok, refuse } from '#result';

/** Fewest samples a second: half of it is the highest pitch that can stand in a recording, and the top key sounds at 4186 Hz. */
export const MIN_RATE_HZ = 8000;

/** Most samples a second: the fastest that sound hardware offers. */
export const MAX_RATE_HZ = 384_000;

/** Most channels: a row of microphones; more is no recording of one piano. */
export const MAX_CHANNELS = 8;

/** Longest recording in seconds: a walk over 88 keys at twenty seconds a key. */
export const MAX_SECONDS = 1800;

/** Most samples of all channels together: 17 minutes of two channels at 48 kHz, 800 MB while it is worked on. */
export const MAX_VALUES = 100_000_000;

/** Largest file: the most samples there may be, at four bytes each. */
export const MAX_RECORDING_BYTES = 4 * MAX_VALUES;

/** Largest sample taken from a file of floating point figures, where full scale is 1: 120 dB above it no converter reaches. */
export const MAX_LEVEL = 1_000_000;

/** Largest sample taken from a file compressed with loss: 18 dB above full scale, where only damage leads. */
export const MAX_LOSSY_LEVEL = 8;

/** What a header says of a recording. `frames` counts the samples of one channel; null where the header does not say. */
export interface Shape {
  readonly sampleRateHz: number;
  readonly channels: number;
  readonly frames: number | null;
}

/** Holds a recording to the limits before anything of it is decoded; every limit that is passed is named. */
export function checkShape(shape: Shape): Result<Shape> {
  const issues = [...rateIssues(shape.sampleRateHz), ...channelIssues(shape.channels), ...lengthIssues(shape)];
  return issues.length > 0 ? refuse(...issues) : ok(shape);
}

function rateIssues(given: number): readonly Issue[] {
  if (given >= MIN_RATE_HZ && given <= MAX_RATE_HZ) return [];
  return [{ code: 'range', path: 'sampleRateHz', given, allowed: `${String(MIN_RATE_HZ)} to ${String(MAX_RATE_HZ)} samples a second`, params: { reason: 'recordingRate', min: MIN_RATE_HZ, max: MAX_RATE_HZ } }];
}

function channelIssues(given: number): readonly Issue[] {
  if (given >= 1 && given <= MAX_CHANNELS) return [];
  return [{ code: 'range', path: 'channels', given, allowed: `1 to ${String(MAX_CHANNELS)} channels`, params: { reason: 'recordingChannels', min: 1, max: MAX_CHANNELS } }];
}

function lengthIssues({ sampleRateHz, channels, frames }: Shape): readonly Issue[] {
  if (frames === null || !(sampleRateHz > 0)) return [];
  if (frames === 0) return [noSamples];
  return frames > mostFrames(sampleRateHz, channels) ? [tooLong({ sampleRateHz, channels, frames })] : [];
}

/** Most samples of one channel that a recording of this rate and so many channels may have. */
export function mostFrames(sampleRateHz: number, channels: number): number {
  return Math.floor(Math.min(MAX_SECONDS * sampleRateHz, MAX_VALUES / Math.max(1, channels)));
}

/** The issue of a recording that is longer than is worked on; `frames` as far as is known. */
export function tooLong({ sampleRateHz, channels, frames }: Shape): Issue {
  const max = Math.floor(mostFrames(sampleRateHz, channels) / sampleRateHz);
  const given = Math.ceil((frames ?? 0) / sampleRateHz);
  return { code: 'length', path: 'durationS', given, allowed: `at most ${String(max)} s with ${String(channels)} channels at ${String(sampleRateHz)} Hz`, params: { reason: 'recordingLong', max, channels, sampleRateHz } };
}

/** The issue of a recording that holds nothing. */
export const noSamples: Issue = { code: 'length', path: 'durationS', given: 0, allowed: 'at least one sample', params: { reason: 'recordingEmpty' } };

/** The issue of a file that is larger than is read at all. */
export function recordingTooLarge(byteCount: number, max = MAX_RECORDING_BYTES): Issue {
  const inMb = (bytes: number): number => Math.ceil(bytes / 1_000_000);
  return { code: 'length', path: '', given: `${String(inMb(byteCount))} MB`, allowed: `at most ${String(inMb(max))} MB`, params: { reason: 'recordingLarge', max: inMb(max) } };
}
