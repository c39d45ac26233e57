/** How loud one channel is, full scale at 1. */
export interface ChannelLevel {
  /** Largest sample without its sign. */
  readonly peak: number;
  /** Mean of all samples: what a converter adds to silence. */
  readonly dcOffset: number;
  /** Runs of at least three samples at full scale. */
  readonly clippedRuns: number;
}

/** Samples in a row at full scale that make a clipped run: one or two may be a true peak. */
const SHORTEST_RUN = 3;

/**
 * Level of one channel, in one pass.
 * Full scale is reached from one and a half steps of the file's own resolution below 1, since the largest whole number
 * of `bits` is one step below it; without `bits` the steps of 16 bits are taken.
 */
export function levelOf(channel: Float64Array, bits: number | null): ChannelLevel {
  const ceiling = 1 - 1.5 * 2 ** (1 - Math.min(bits ?? 16, 16));
  let peak = 0;
  let sum = 0;
  let run = 0;
  let clippedRuns = 0;
  for (const value of channel) {
    const size = Math.abs(value);
    if (size > peak) peak = size;
    sum += value;
    run = size >= ceiling ? run + 1 : 0;
    if (run === SHORTEST_RUN) clippedRuns += 1;
  }
  return { peak, dcOffset: sum / channel.length, clippedRuns };
}
