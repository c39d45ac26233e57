import { type ComplexList, powerOfTwoFrom, spectrumOf } from '#numerics';
import { type Exponents, type LinesFit, fitLines } from './damped-lines.ts';
import type { Baseband } from './zoom.ts';

/** One damped line of a partial: a·e^(−αt)·cos(2πft + φ). */
export interface Line {
  readonly frequencyHz: number;
  readonly frequencyUncertaintyHz: number;
  readonly dampingPerS: number;
  /** Amplitude at the begin of the window, root mean square over the channels; 1 is full scale. */
  readonly amplitude: number;
}

/** A partial as heard: one damped line through it, and as many as the data bear. */
export interface HeardPartial {
  readonly single: Line;
  readonly lines: readonly Line[];
  /** Share of the energy of the band that the lines explain. */
  readonly explained: number;
}

const MOST_LINES = 3;
/** A line this far below the strongest is not a string of its own. */
const FAINTEST_DB = -30;
/** At the edges of the band its shape lets through so little that an amplitude means nothing. */
const LEAST_GAIN = 0.2;

/** Fits one damped line, and where the data bear more, two or three, to the band around a partial. Choice by BIC. @source SCHWARZ-1978 */
export function partialIn(band: Baseband, mostLines = MOST_LINES): HeardPartial | undefined {
  const first = fitLines(band.channels, firstStart(band.channels));
  if (first === undefined || !stays(first)) return undefined;
  let best = first;
  for (let count = 2; count <= mostLines; count++) {
    const more = withOneMore(band.channels, best);
    if (more === undefined || criterion(more, band) >= criterion(best, band)) break;
    best = more;
  }
  const energy = energyOf(band.channels);
  const [single] = linesOf(first, band);
  if (single === undefined) return undefined;
  const inside = linesOf(best, band).filter(({ frequencyHz }) => band.gainAt(frequencyHz - band.centreHz) > LEAST_GAIN);
  return { single, lines: inside.length === 0 ? [single] : audible(inside), explained: 1 - best.residual / energy };
}

const energyOf = (channels: readonly ComplexList[]): number => channels.reduce((sum, { re, im }) => sum + re.reduce((part, x, m) => part + x * x + (im[m] ?? 0) ** 2, 0), 0);

/** BIC = N·ln(RSS/N) + k·ln N, with N the real samples that are free of each other: the band lets through only a share of the noise. */
function criterion({ residual, exponents, amplitudes }: LinesFit, { channels, noiseShare }: Baseband): number {
  const free = 2 * channels.length * (channels[0]?.re.length ?? 0) * noiseShare;
  const unknowns = exponents.re.length * (2 + 2 * amplitudes.length);
  return free * Math.log(residual) + unknowns * Math.log(free);
}

/** Start of the first line: the highest bin, and the damping by which the second half is weaker than the first. */
function firstStart(channels: readonly ComplexList[]): Exponents {
  const half = Math.floor((channels[0]?.re.length ?? 0) / 2);
  const part = (from: number): number => energyOf(channels.map(({ re, im }) => ({ re: re.subarray(from, from + half), im: im.subarray(from, from + half) })));
  const damping = Math.log(Math.max(part(0), 1e-300) / Math.max(part(half), 1e-300)) / (2 * half);
  return { re: Float64Array.of(-Math.min(0.5, Math.max(damping, 1e-4))), im: Float64Array.of(highestAt(channels)) };
}

/** Angle a sample of the highest bin of the channels' spectra. */
function highestAt(channels: readonly ComplexList[]): number {
  const size = 2 * powerOfTwoFrom(channels[0]?.re.length ?? 0);
  const power = new Float64Array(size);
  for (const channel of channels) {
    const padded = { re: new Float64Array(size), im: new Float64Array(size) };
    padded.re.set(channel.re);
    padded.im.set(channel.im);
    const { re, im } = spectrumOf(padded);
    for (let k = 0; k < size; k++) power[k] = (power[k] ?? 0) + (re[k] ?? 0) ** 2 + (im[k] ?? 0) ** 2;
  }
  const highest = power.reduce((best, value, k) => (value > (power[best] ?? 0) ? k : best), 0);
  return (2 * Math.PI * (highest < size / 2 ? highest : highest - size)) / size;
}

/** One line more than a fit has: at the highest bin of what is left over, or as a slower decay of the strongest; whichever explains more. */
function withOneMore(channels: readonly ComplexList[], { exponents, amplitudes }: LinesFit): LinesFit | undefined {
  const left = channels.map((channel, at) => leftOver(channel, exponents, amplitudes[at]));
  const sizes = Array.from(exponents.re, (_, j) => amplitudes.reduce((sum, { re, im }) => sum + (re[j] ?? 0) ** 2 + (im[j] ?? 0) ** 2, 0));
  const main = sizes.indexOf(Math.max(...sizes));
  const [damping, angle] = [exponents.re[main] ?? 0, exponents.im[main] ?? 0];
  const grown = (re: number, im: number): Exponents => ({ re: Float64Array.of(...exponents.re, re), im: Float64Array.of(...exponents.im, im) });
  const fits = [grown(damping, highestAt(left)), grown(damping / 4, angle)].map((start) => fitLines(channels, start));
  return fits.reduce<LinesFit | undefined>((best, fit) => (fit !== undefined && stays(fit) && fit.residual < (best?.residual ?? Infinity) ? fit : best), undefined);
}

function leftOver({ re, im }: ComplexList, exponents: Exponents, amplitudes: ComplexList | undefined): ComplexList {
  const left = { re: re.slice(), im: im.slice() };
  for (let j = 0; j < exponents.re.length; j++) {
    const shrink = Math.exp(exponents.re[j] ?? 0);
    const [turnRe, turnIm] = [shrink * Math.cos(exponents.im[j] ?? 0), shrink * Math.sin(exponents.im[j] ?? 0)];
    let [x, y] = [amplitudes?.re[j] ?? 0, amplitudes?.im[j] ?? 0];
    for (let m = 0; m < left.re.length; m++) {
      left.re[m] = (left.re[m] ?? 0) - x;
      left.im[m] = (left.im[m] ?? 0) - y;
      [x, y] = [x * turnRe - y * turnIm, x * turnIm + y * turnRe];
    }
  }
  return left;
}

/** No line has left the band, and none grows with time by more than a beat too slow to be seen would make it. */
function stays({ exponents: { re, im } }: LinesFit): boolean {
  return im.every((angle) => Math.abs(angle) < 0.9 * Math.PI) && re.every((damping) => Number.isFinite(damping) && damping < 0.05);
}

function linesOf({ exponents, amplitudes, residual, spread }: LinesFit, { centreHz, stepS, channels, gainAt, noiseShare }: Baseband): readonly Line[] {
  const count = channels.length * (channels[0]?.re.length ?? 0);
  const variance = residual / Math.max(1, (count - exponents.re.length * (1 + channels.length)) * noiseShare);
  return Array.from(exponents.im, (angle, j): Line => {
    const offsetHz = angle / (2 * Math.PI * stepS);
    const power = amplitudes.reduce((sum, { re, im }) => sum + (re[j] ?? 0) ** 2 + (im[j] ?? 0) ** 2, 0) / channels.length;
    return {
      frequencyHz: centreHz + offsetHz,
      frequencyUncertaintyHz: Math.sqrt(((spread[j] ?? 0) * variance) / 2) / (2 * Math.PI * stepS),
      dampingPerS: -(exponents.re[j] ?? 0) / stepS,
      amplitude: Math.sqrt(power) / Math.max(1e-6, gainAt(offsetHz)),
    };
  });
}

function audible(lines: readonly Line[]): readonly Line[] {
  const least = Math.max(...lines.map(({ amplitude }) => amplitude)) * 10 ** (FAINTEST_DB / 20);
  return lines.filter(({ amplitude }) => amplitude >= least).sort((a, b) => a.frequencyHz - b.frequencyHz);
}
