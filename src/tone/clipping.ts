import type { Samples } from '#numerics';

/** A flat top is this close to the highest sample, a slope beside it reaches down to the second share. */
const TOP = 1 - 1e-4;
const NEAR = 0.98;
/** Flat tops are as many samples long at least, and as many of them make a clipped recording. */
const RUN = 3;
const RUNS = 3;

/** Whether the tops of the wave are cut off: several flat tops at one height, holding more samples than the slopes beside them. @source OWN */
export function isClipped({ channels }: Samples): boolean {
  return channels.some((channel) => {
    const peak = peakOf(channel);
    let [top, near, runs, run] = [0, 0, 0, 0];
    for (let at = 0; at < channel.length; at++) {
      const x = Math.abs(channel[at] ?? 0);
      if (x < NEAR * peak) {
        run = 0;
        continue;
      }
      const isTop = x >= TOP * peak;
      run = isTop ? run + 1 : 0;
      if (run === RUN) runs++;
      if (isTop) top++;
      else near++;
    }
    return peak > 0 && runs >= RUNS && top > near;
  });
}

function peakOf(channel: Float64Array): number {
  let peak = 0;
  for (let at = 0; at < channel.length; at++) peak = Math.max(peak, Math.abs(channel[at] ?? 0));
  return peak;
}
