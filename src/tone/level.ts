import type { Samples } from '#numerics';
import { partOf } from './part-of.ts';

/** The level of a note is that of its first half second. */
export const LOUDNESS_S = 0.5;

/** Level of a stretch of a sound, decibels under full scale: 10·lg of the mean square, mean of the channels; −200 dB at the least. */
export function levelDbOf(samples: Samples, fromS: number, toS: number): number {
  const { channels } = partOf(samples, fromS, toS);
  const power = channels.reduce((sum, channel) => sum + channel.reduce((part, x) => part + x * x, 0) / Math.max(1, channel.length), 0);
  return 10 * Math.log10(Math.max(power / Math.max(1, channels.length), 1e-20));
}
