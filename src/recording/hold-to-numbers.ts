import { type Result, ok } from '#result';
import { refuseFile } from './issues.ts';
import { MAX_LEVEL, MAX_LOSSY_LEVEL } from './limits.ts';
import type { Decoded } from './recording.ts';

/** Refuses what is no number, or far beyond any level, naming channel and place of the first. */
export function holdToNumbers(decoded: Decoded): Result<Decoded> {
  const { sampleRateHz, channels } = decoded.samples;
  for (const [channel, list] of channels.entries()) {
    const max = decoded.coding === 'lossy' ? MAX_LOSSY_LEVEL : MAX_LEVEL;
    const frame = firstWrong(list, max);
    if (frame !== undefined) return refuseFile('recordingValue', String(list[frame]), `a number of at most ${String(max)} times full scale`, `channels[${String(channel)}][${String(frame)}]`, { channel: channel + 1, max, at: frame / sampleRateHz });
  }
  return ok(decoded);
}

function firstWrong(list: Float64Array, max: number): number | undefined {
  for (let frame = 0; frame < list.length; frame += 1) if (!(Math.abs(list[frame] ?? 0) <= max)) return frame;
  return undefined;
}
