import type { Samples } from '#numerics';
import { densitySpectrumOf } from '../decay/noise.ts';

/** Density of the steady noise by band: what stands between the partials in the late part of a note. */
export interface NoiseFloor {
  readonly bands: readonly { readonly toHz: number; readonly density: number }[];
}

const BANDS_PER_OCTAVE = 3;
const LOWEST_HZ = 20;
/** The median of a periodogram over its mean. */
const MEDIAN_OVER_MEAN = Math.LN2;

/** Noise from a stretch in which a note is nearly gone: by third octaves, the median of the bins, which partials fill but few of. */
export function noiseFloorOf(samples: Samples, fromS: number, toS: number): NoiseFloor {
  const { channels, binHz } = densitySpectrumOf(samples, fromS, toS);
  const length = channels[0]?.length ?? 0;
  const bands: { toHz: number; density: number }[] = [];
  for (let low = LOWEST_HZ; low < length * binHz; low *= 2 ** (1 / BANDS_PER_OCTAVE)) {
    const high = low * 2 ** (1 / BANDS_PER_OCTAVE);
    const [from, to] = [Math.max(1, Math.floor(low / binHz)), Math.min(length, Math.max(Math.ceil(high / binHz), Math.floor(low / binHz) + 1))];
    const density = channels.reduce((sum, power) => sum + middleOf(power, from, to) / MEDIAN_OVER_MEAN, 0);
    bands.push({ toHz: high, density });
  }
  return { bands };
}

/** The middle value of a stretch, or 0 of an empty one. */
function middleOf(list: Float64Array, from: number, to: number): number {
  const sorted = list.slice(from, to).sort();
  return sorted[sorted.length >> 1] ?? 0;
}

/** Power of the noise between two frequencies. */
export function floorPowerOf({ bands }: NoiseFloor, fromHz: number, toHz: number): number {
  let low = 0;
  return bands.reduce((sum, { toHz: high, density }) => {
    const width = Math.min(high, toHz) - Math.max(low, fromHz);
    low = high;
    return width > 0 ? sum + density * width : sum;
  }, 0);
}
