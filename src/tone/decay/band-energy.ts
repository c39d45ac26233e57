import { type ComplexList, type Samples, powerOfTwoFrom, realSpectrumOf, signalOf } from '#numerics';

/** A stretch of sound in the frequency domain, each channel by itself. */
export interface Stretch {
  readonly spectra: readonly ComplexList[];
  readonly size: number;
  readonly sampleRateHz: number;
  readonly seconds: number;
}

/** Power in one band over time, channels summed. */
export interface BandEnergy {
  readonly energy: Float64Array;
  readonly stepS: number;
}

/** Band filters die within this many of their standard deviations in time: e^(−8) of the amplitude. */
export const SETTLE_SIGMAS = 4;

/** A Gaussian weight is nought, to double precision of an energy, beyond this many standard deviations of frequency. */
const REACH_SIGMAS = 6;

/** Standard deviation in time of a Gaussian filter of standard deviation σ in frequency. σt = 1/(2π·σf) */
export function settleSigmaOf(sigmaHz: number): number {
  return 1 / (2 * Math.PI * sigmaHz);
}

/** Spectra of a stretch, padded so that a filter of `sigmaHz` does not reach round from its end to its beginning. */
export function stretchOf({ sampleRateHz, channels }: Samples, fromS: number, toS: number, sigmaHz: number): Stretch {
  const [from, to] = [Math.max(0, Math.round(fromS * sampleRateHz)), Math.round(toS * sampleRateHz)];
  const parts = channels.map((channel) => channel.subarray(from, to));
  const count = parts[0]?.length ?? 0;
  const size = powerOfTwoFrom(count + Math.ceil(2 * SETTLE_SIGMAS * settleSigmaOf(sigmaHz) * sampleRateHz));
  return { spectra: parts.map((part) => realSpectrumOf(part, size)), size, sampleRateHz, seconds: count / sampleRateHz };
}

/**
 * Power of a band: the bins about its centre under a Gaussian, brought down to a short complex baseband z of every channel, Σ 2|z|².
 * A steady cosine of amplitude a at the centre gives a²/2; white noise of one-sided density S gives S·σ·√π.
 * An exponential decay stays one, exactly, once the filter has settled: e^(−αt) passes as e^(−αt) times a constant.
 */
export function bandEnergyOf(stretch: Stretch, centreHz: number, sigmaHz: number): BandEnergy {
  const { size, sampleRateHz, seconds } = stretch;
  const binHz = sampleRateHz / size;
  const points = Math.min(size, powerOfTwoFrom(Math.ceil((2 * REACH_SIGMAS * sigmaHz) / binHz)));
  const stepS = size / points / sampleRateHz;
  const energy = new Float64Array(Math.max(0, Math.floor(seconds / stepS)));
  for (const spectrum of stretch.spectra) {
    const { re, im } = signalOf(baseband(spectrum, { centreHz, sigmaHz, binHz, points }));
    const scale = 2 * (points / size) ** 2;
    for (let at = 0; at < energy.length; at++) energy[at] = (energy[at] ?? 0) + scale * ((re[at] ?? 0) ** 2 + (im[at] ?? 0) ** 2);
  }
  return { energy, stepS };
}

interface Band {
  readonly centreHz: number;
  readonly sigmaHz: number;
  readonly binHz: number;
  readonly points: number;
}

function baseband({ re, im }: ComplexList, { centreHz, sigmaHz, binHz, points }: Band): ComplexList {
  const out = { re: new Float64Array(points), im: new Float64Array(points) };
  const middle = Math.round(centreHz / binHz);
  const half = Math.min(points / 2 - 1, Math.ceil((REACH_SIGMAS * sigmaHz) / binHz));
  for (let offset = -half; offset <= half; offset++) {
    const bin = middle + offset;
    if (bin < 1 || bin >= re.length) continue;
    const weight = Math.exp(-0.5 * ((bin * binHz - centreHz) / sigmaHz) ** 2);
    const place = (offset + points) % points;
    out.re[place] = weight * (re[bin] ?? 0);
    out.im[place] = weight * (im[bin] ?? 0);
  }
  return out;
}
