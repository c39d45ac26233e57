import { type ComplexList, type Samples, powerOfTwoFrom, realSpectrumOf } from '#numerics';

/** Power in each bin of frequency, all channels together, and the noise under it. */
export interface Spectrum {
  readonly binHz: number;
  /** Scaled so that white noise of variance v has the mean v a channel. */
  readonly power: Float64Array;
  /** Mean power of the noise in the bin: first quartile of the band around it over ln 4/3. */
  readonly floor: Float64Array;
}

export interface Peak {
  readonly frequencyHz: number;
  readonly power: number;
  /** Over the noise. */
  readonly aboveDb: number;
}

export interface Span {
  readonly fromS: number;
  readonly toS: number;
}

const RISE_S = 0.06;
/** A band of the noise floor is this wide at least, and a sixth of an octave. */
const FLOOR_BAND_HZ = 160;
const FLOOR_BAND_RATIO = 2 ** (1 / 6);
/** First quartile of an exponential distribution of mean 1: most bins of a band may hold a partial without raising its floor. */
const QUARTILE = Math.log(4 / 3);
/** Noise alone passes it once in 10⁷ bins: e^(−10^1.2). */
const PEAK_ABOVE_DB = 12;
const MOST_PEAKS = 250;
/** Lines this far below the strongest say nothing of which note it is. */
const FAINTEST_DB = -60;
/** Below the lowest string there is only rumble. */
const LOWEST_HZ = 22;
const HIGHEST_HZ = 16_000;

/** Rises as a half cosine in `rise` samples and falls as one over the rest: early enough for a treble note, free of edges. */
function taperOf(count: number, rise: number): Float64Array {
  const taper = new Float64Array(count);
  for (let at = 0; at < count; at++) taper[at] = at < rise ? 0.5 - 0.5 * Math.cos((Math.PI * (at + 0.5)) / rise) : 0.5 + 0.5 * Math.cos((Math.PI * (at + 0.5 - rise)) / (count - rise));
  return taper;
}

/** Power spectrum of a span of time. P_k = Σ_channels |Σ_t w_t·x_t·e^(−2πikt/N)|² / Σ w². @source OWN */
export function spectrumOfSpan(samples: Samples, span: Span, riseS = RISE_S): Spectrum {
  const { sampleRateHz, channels } = samples;
  const from = Math.round(span.fromS * sampleRateHz);
  const count = Math.min(Math.round(span.toS * sampleRateHz), channels[0]?.length ?? 0) - from;
  const taper = taperOf(count, Math.min(Math.round(riseS * sampleRateHz), count / 2));
  let weight = 0;
  for (let at = 0; at < count; at++) weight += (taper[at] ?? 0) ** 2;
  const size = powerOfTwoFrom(count);
  const power = new Float64Array(size / 2);
  for (const channel of channels) addPower(power, realSpectrumOf(tapered(channel, from, taper), size), weight);
  const binHz = sampleRateHz / size;
  return { binHz, power, floor: floorOf(power, binHz) };
}

function tapered(channel: Float64Array, from: number, taper: Float64Array): Float64Array {
  const out = new Float64Array(taper.length);
  for (let at = 0; at < out.length; at++) out[at] = (taper[at] ?? 0) * (channel[from + at] ?? 0);
  return out;
}

function addPower(power: Float64Array, { re, im }: ComplexList, weight: number): void {
  for (let k = 0; k < power.length; k++) power[k] = (power[k] ?? 0) + ((re[k] ?? 0) ** 2 + (im[k] ?? 0) ** 2) / weight;
}

/** Noise under the partials: from the first quartile of bands, laid through in a straight line between their middles. */
function floorOf(power: Float64Array, binHz: number): Float64Array {
  const middles: number[] = [];
  const levels: number[] = [];
  for (let low = 0; low < power.length;) {
    const high = Math.min(power.length, Math.max(low + Math.ceil(FLOOR_BAND_HZ / binHz), Math.ceil(low * FLOOR_BAND_RATIO)));
    middles.push((low + high) / 2);
    levels.push((power.slice(low, high).sort()[(high - low) >> 2] ?? 0) / QUARTILE);
    low = high;
  }
  return interpolated(middles, levels, power.length);
}

function interpolated(places: readonly number[], values: readonly number[], count: number): Float64Array {
  const out = new Float64Array(count);
  let next = 0;
  for (let at = 0; at < count; at++) {
    while (next < places.length - 1 && at > (places[next] ?? 0)) next++;
    const [x0, x1] = [places[Math.max(0, next - 1)] ?? 0, places[next] ?? 0];
    const [y0, y1] = [values[Math.max(0, next - 1)] ?? 0, values[next] ?? 0];
    const share = x1 > x0 ? Math.min(1, Math.max(0, (at - x0) / (x1 - x0))) : 1;
    out[at] = y0 + (y1 - y0) * share;
  }
  return out;
}

/** Every line that stands 12 dB over the noise and less than 60 dB below the strongest, from low to high; the frequency by a parabola through the logarithms of three bins. */
export function peaksOf({ binHz, power, floor }: Spectrum): readonly Peak[] {
  const ratio = 10 ** (PEAK_ABOVE_DB / 10);
  const lowest = Math.ceil(LOWEST_HZ / binHz);
  const faintest = power.subarray(lowest).reduce((most, value) => Math.max(most, value), 0) * 10 ** (FAINTEST_DB / 10);
  const peaks: Peak[] = [];
  const last = Math.min(power.length - 2, Math.floor(HIGHEST_HZ / binHz));
  for (let k = lowest; k < last; k++) {
    const [before, here, after] = [power[k - 1] ?? 0, power[k] ?? 0, power[k + 1] ?? 0];
    const under = Math.max(floor[k] ?? 0, faintest / ratio);
    if (here <= ratio * under || here <= before || here < after) continue;
    const [a, b, c] = [Math.log(before), Math.log(here), Math.log(after)];
    const shift = (a - c) / (2 * (a - 2 * b + c));
    peaks.push({ frequencyHz: (k + (Number.isFinite(shift) ? shift : 0)) * binHz, power: here, aboveDb: 10 * Math.log10(here / under) });
  }
  return strongest(peaks, MOST_PEAKS);
}

function strongest(peaks: readonly Peak[], most: number): readonly Peak[] {
  if (peaks.length <= most) return peaks;
  const least = peaks.map(({ power }) => power).sort((a, b) => b - a)[most - 1] ?? 0;
  return peaks.filter(({ power }) => power >= least);
}
