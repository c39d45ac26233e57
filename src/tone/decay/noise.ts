import { type Samples, medianOf, realSpectrumOf } from '#numerics';

/** One-sided power density of the noise, a figure per frequency asked, channels summed. */
export interface NoiseDensity {
  /** Power per hertz. */
  readonly density: number;
  /** How many bins it rests on. */
  readonly bins: number;
}

/** Median of an exponential distribution of mean 1: what the median of a periodogram is of its mean. */
const EXPONENTIAL_MEDIAN = Math.LN2;

/** Power spectrum of a stretch under a Hann window, scaled to a one-sided density, each channel by itself. */
export interface DensitySpectrum {
  readonly channels: readonly Float64Array[];
  readonly binHz: number;
}

/** Hann window over the whole stretch: S(f) = 2|X|²/(fs·Σw²). */
export function densitySpectrumOf({ sampleRateHz, channels }: Samples, fromS: number, toS: number): DensitySpectrum {
  const [from, to] = [Math.round(fromS * sampleRateHz), Math.round(toS * sampleRateHz)];
  const spectra = channels.map((channel) => {
    const part = channel.subarray(from, to);
    const windowed = part.map((x, at) => x * Math.sin((Math.PI * (at + 0.5)) / part.length) ** 2);
    const { re, im } = realSpectrumOf(windowed);
    const scale = 2 / (sampleRateHz * 0.375 * part.length);
    return { power: re.map((x, bin) => scale * (x * x + (im[bin] ?? 0) ** 2)), size: 2 * (re.length - 1) };
  });
  return { channels: spectra.map(({ power }) => power), binHz: sampleRateHz / (spectra[0]?.size ?? 1) };
}

/** The share of a note at its end in which the noise is sought, the least and the most of it. */
const QUIET_SHARE = 0.4;
const LEAST_QUIET_S = 0.25;
const MOST_QUIET_S = 2;

/** Where the quiet part of a note begins: its last two fifths, a quarter of a second to two seconds. */
export function quietFromS(onsetS: number, endS: number): number {
  return Math.max(onsetS, endS - Math.min(MOST_QUIET_S, Math.max(QUIET_SHARE * (endS - onsetS), LEAST_QUIET_S)));
}

/** Widest reach for noise about a partial: noise further off is another colour. */
const WIDEST_GAP_HZ = 400;

/**
 * Noise about a partial, from the bins between it and its neighbours: the median of those at a quarter to three quarters of the gap on
 * either side, taken as the median of an exponential distribution. The late part of a note is asked, where partials are weakest and narrowest.
 */
export function noiseAbout(spectrum: DensitySpectrum, centreHz: number, gapHz: number): NoiseDensity {
  const gap = Math.min(gapHz, WIDEST_GAP_HZ);
  const places = [-1, 1].flatMap((side) => {
    const [from, to] = [centreHz + side * 0.25 * gap, centreHz + side * 0.75 * gap].sort((a, b) => a - b).map((hz) => Math.round(hz / spectrum.binHz));
    return Array.from({ length: Math.max(0, (to ?? 0) - (from ?? 0) + 1) }, (_, index) => (from ?? 0) + index);
  });
  const sums = spectrum.channels.map((power) => {
    const values = places.flatMap((bin) => (bin < 1 || bin >= power.length ? [] : [power[bin] ?? 0]));
    return { density: values.length === 0 ? 0 : medianOf(values) / EXPONENTIAL_MEDIAN, bins: values.length };
  });
  return { density: sums.reduce((sum, { density }) => sum + density, 0), bins: Math.min(...sums.map(({ bins }) => bins)) };
}
