import { type ComplexList, type Samples, powerOfTwoFrom, realSpectrumOf, signalOf } from '#numerics';
import type { Span } from './spectrum.ts';

/** The whole of a stretch of sound in the frequency domain, ready to be looked at closely around any frequency. */
export interface Zoomable {
  readonly binHz: number;
  readonly spectra: readonly ComplexList[];
  readonly startS: number;
  readonly seconds: number;
}

/** A narrow band around a frequency, brought down to nought: slow complex signals, one a channel, of one length. */
export interface Baseband {
  readonly centreHz: number;
  readonly stepS: number;
  readonly channels: readonly ComplexList[];
  /** What the shape of the band makes of a line this far from the centre: an amplitude is divided by it. */
  readonly gainAt: (offsetHz: number) => number;
  /** Share of white noise that the shape lets through, in power, over the band of the samples. */
  readonly noiseShare: number;
}

/** Shape of the band, after R. B. Blackman: its side lobes in time lie at −58 dB. */
const SHAPE = [0.42, 0.5, 0.08] as const;
/** A band of half width W rings for 1.5/W. */
const RING = 1.5;
const shapeAt = (share: number): number => (Math.abs(share) >= 1 ? 0 : SHAPE[0] + SHAPE[1] * Math.cos(Math.PI * share) + SHAPE[2] * Math.cos(2 * Math.PI * share));

/** How long a band of this half width rings on: that much after a jump nothing of it is left. @source OWN: first null of the transform of the shape */
export function ringingS(halfWidthHz: number): number {
  return RING / halfWidthHz;
}

/** One Fourier transform a channel, of a stretch of sound that fades out at its end within `fadeS`. */
export function zoomableOf({ sampleRateHz, channels }: Samples, { fromS, toS }: Span, fadeS: number): Zoomable {
  const from = Math.max(0, Math.round(fromS * sampleRateHz));
  const to = Math.min(channels[0]?.length ?? 0, Math.round((toS + fadeS) * sampleRateHz));
  const fade = Math.round(fadeS * sampleRateHz);
  const size = powerOfTwoFrom(to - from);
  const spectra = channels.map((channel) => {
    const stretch = channel.slice(from, to);
    for (let at = Math.max(0, stretch.length - fade); at < stretch.length; at++) {
      stretch[at] = (stretch[at] ?? 0) * (0.5 - 0.5 * Math.cos((Math.PI * (stretch.length - at - 0.5)) / fade));
    }
    return realSpectrumOf(stretch, size);
  });
  return { binHz: sampleRateHz / size, spectra, startS: from / sampleRateHz, seconds: (to - from) / sampleRateHz };
}

/**
 * The band ±W around a frequency, W at most `halfWidthHz`, from `fromS` to `toS` of the recording: the bins of the band, weighted by
 * its shape, put back into time by a short inverse transform. A damped line stays a damped line: a·e^(st) becomes H(s)·a·e^(st). @source OWN
 */
export function basebandOf({ binHz, spectra, startS }: Zoomable, frequencyHz: number, halfWidthHz: number, { fromS, toS }: Span): Baseband {
  const half = Math.max(2, Math.floor(halfWidthHz / binHz));
  const size = powerOfTwoFrom(2 * half);
  const middle = Math.round(frequencyHz / binHz);
  const stepS = 1 / (size * binHz);
  const first = Math.ceil((fromS - startS) / stepS);
  const end = Math.max(first + 4, Math.min(size, Math.floor((toS - startS) / stepS)));
  const channels = spectra.map((spectrum) => {
    const { re, im } = signalOf(bandOf(spectrum, middle, half, size));
    return { re: re.slice(first, end), im: im.slice(first, end) };
  });
  const noiseShare = (2 * half * (SHAPE[0] ** 2 + (SHAPE[1] ** 2 + SHAPE[2] ** 2) / 2)) / size;
  return { centreHz: middle * binHz, stepS, channels, gainAt: (offsetHz) => shapeAt(offsetHz / (half * binHz)), noiseShare };
}

/** Scaled so that the inverse transform gives the amplitude of a real line as it was: half of it stands at the negative frequency. */
function bandOf({ re, im }: ComplexList, middle: number, half: number, size: number): ComplexList {
  const band = { re: new Float64Array(size), im: new Float64Array(size) };
  const scale = size / (re.length - 1);
  for (let offset = -half + 1; offset < half; offset++) {
    const to = offset < 0 ? size + offset : offset;
    const weight = scale * shapeAt(offset / half);
    band.re[to] = weight * (re[middle + offset] ?? 0);
    band.im[to] = weight * (im[middle + offset] ?? 0);
  }
  return band;
}
