import { type Samples, realSpectrumOf } from '#numerics';

/** Frames are so long, and follow each other so closely. */
const FRAME_S = 0.04;
const HOP_S = 0.02;
/** A strike is sought as a rise over so many frames, which do not overlap. */
const RISE_FRAMES = 3;
/** Bands of two thirds of an octave. */
const LOWEST_HZ = 60;
const HIGHEST_HZ = 12_000;
const BANDS_PER_OCTAVE = 1.5;
/** Levels are taken from so far above what is there a tenth of the time. */
const ABOVE_FLOOR_DB = 6;
const QUIET_SHARE = 0.1;
/** Mean rise over the bands that counts as a strike, and how long it stays the highest. */
const LEAST_RISE_DB = 3;
const ALONE_S = 0.2;
/** Blocks the moment of a strike is found to. */
const BLOCK_S = 0.002;

/** Moments at which something is struck, in seconds: where the level rises in many bands at once, told to 2 ms. @source OWN */
export function strikesIn(samples: Samples): readonly number[] {
  const rises = risesOf(bandLevelsOf(samples));
  const reach = Math.round(ALONE_S / HOP_S);
  const places: number[] = [];
  for (const [at, rise] of rises.entries()) {
    if (rise < LEAST_RISE_DB) continue;
    const around = rises.subarray(Math.max(0, at - reach), at + reach + 1);
    if (around.every((other) => other <= rise) && at - (places.at(-1) ?? -reach) >= reach) places.push(at);
  }
  return places.map((at) => momentOf(samples, Math.max(0, (at - RISE_FRAMES) * HOP_S), at * HOP_S + FRAME_S));
}

/** Level of each band in each frame, band by band, all channels together. */
function bandLevelsOf({ sampleRateHz, channels }: Samples): readonly Float64Array[] {
  const size = 2 ** Math.round(Math.log2(FRAME_S * sampleRateHz));
  const hop = Math.round(HOP_S * sampleRateHz);
  const frames = Math.max(0, Math.floor(((channels[0]?.length ?? 0) - size) / hop) + 1);
  const bandOf = bandOfBins(size, sampleRateHz);
  const levels = Array.from({ length: Math.max(0, ...bandOf) + 1 }, () => new Float64Array(frames));
  const window = Float64Array.from({ length: size }, (_, at) => Math.sin((Math.PI * (at + 0.5)) / size) ** 2);
  const framed = new Float64Array(size);
  for (const channel of channels) for (let frame = 0; frame < frames; frame++) {
    for (let at = 0; at < size; at++) framed[at] = (window[at] ?? 0) * (channel[frame * hop + at] ?? 0);
    const { re, im } = realSpectrumOf(framed, size);
    for (const [bin, band] of bandOf.entries()) {
      const level = levels[band];
      if (band >= 0 && level !== undefined) level[frame] = (level[frame] ?? 0) + (re[bin] ?? 0) ** 2 + (im[bin] ?? 0) ** 2;
    }
  }
  return levels.map((power) => power.map((value) => 10 * Math.log10(Math.max(value, 1e-20))));
}

/** The band of every bin, −1 outside. */
function bandOfBins(size: number, sampleRateHz: number): readonly number[] {
  return Array.from({ length: size / 2 + 1 }, (_, bin) => {
    const hz = (bin * sampleRateHz) / size;
    return hz < LOWEST_HZ || hz > HIGHEST_HZ ? -1 : Math.floor(BANDS_PER_OCTAVE * Math.log2(hz / LOWEST_HZ));
  });
}

/** Mean over the bands of how far each frame’s level stands over that of three frames before. */
function risesOf(levels: readonly Float64Array[]): Float64Array {
  const rises = new Float64Array(levels[0]?.length ?? 0);
  for (const level of levels) {
    const floor = (level.slice().sort()[Math.floor(QUIET_SHARE * level.length)] ?? 0) + ABOVE_FLOOR_DB;
    for (let at = 0; at < level.length; at++) {
      const before = at < RISE_FRAMES ? floor : Math.max(floor, level[at - RISE_FRAMES] ?? 0);
      rises[at] = (rises[at] ?? 0) + Math.max(0, (level[at] ?? 0) - before) / levels.length;
    }
  }
  return rises;
}

/** Within a span, where the energy of the slope of the sound grows most from one 2 ms to the next: a strike shows in the treble first. */
function momentOf({ sampleRateHz, channels }: Samples, fromS: number, toS: number): number {
  const block = Math.max(1, Math.round(BLOCK_S * sampleRateHz));
  const [from, count] = [Math.round(fromS * sampleRateHz), Math.ceil(((toS - fromS) * sampleRateHz) / block)];
  const energy = new Float64Array(count + 1);
  for (const channel of channels) for (let at = 1; at < energy.length * block; at++) {
    const slope = (channel[from + at] ?? 0) - (channel[from + at - 1] ?? 0);
    energy[Math.floor(at / block)] = (energy[Math.floor(at / block)] ?? 0) + slope * slope;
  }
  let [best, most] = [0, -Infinity];
  const mean = energy.reduce((sum, value) => sum + value, 0) / energy.length;
  for (let at = 1; at < energy.length; at++) {
    const growth = (energy[at] ?? 0) / ((energy[at - 1] ?? 0) + 0.02 * mean + Number.MIN_VALUE);
    if (growth > most) [best, most] = [at, growth];
  }
  return (from + best * block) / sampleRateHz;
}
