import type { Samples } from '#numerics';

/** A stretch of a sound, seen, not copied; s from its beginning, what lies before it left out. */
export function partOf({ sampleRateHz, channels }: Samples, fromS: number, toS: number): Samples {
  const [from, to] = [Math.max(0, Math.round(fromS * sampleRateHz)), Math.round(toS * sampleRateHz)];
  return { sampleRateHz, channels: channels.map((channel) => channel.subarray(from, to)) };
}
