import { type Result, ok } from '#result';
import { refuseFile } from './issues.ts';
import { MAX_LEVEL } from './limits.ts';
import type { Decoded } from './recording.ts';

/** Refuses what is no number, or far beyond any level, naming channel and place of the first. */
export function holdToNumbers(decoded: Decoded): Result<Decoded> {
  const { sampleRateHz, channels } = decoded.samples;
  for (const [channel, list] of channels.entries()) {
    const frame = firstWrong(list);
    if (frame !== undefined) return refuseFile('recordingValue', String(list[frame]), `a number of at most ${String(MAX_LEVEL)} times full scale`, `channels[${String(channel)}][${String(frame)}]`, { channel: channel + 1, at: frame / sampleRateHz });
  }
  return ok(decoded);
}

function firstWrong(list: Float64Array): number | undefined {
  for (let frame = 0; frame < list.length; frame += 1) if (!(Math.abs(list[frame] ?? 0) <= MAX_LEVEL)) return frame;
  return undefined;
}
