/** Sound as numbers: one list a channel, all of one length, full scale at ±1. */
export interface Samples {
  readonly sampleRateHz: number;
  readonly channels: readonly Float64Array[];
}
