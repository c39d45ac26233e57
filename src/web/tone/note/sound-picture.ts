import { type Samples, powerOfTwoFrom, realSpectrumOf } from '#numerics';

/** A point of a curve. */
export interface CurvePoint {
  readonly x: number;
  readonly y: number;
}

/** A note as it is looked at: its spectrum, its decay, and both at once. */
export interface SoundPicture {
  /** Hertz and decibels under the strongest. */
  readonly spectrum: readonly CurvePoint[];
  /** Seconds from the onset and decibels below full scale. */
  readonly decay: readonly CurvePoint[];
  readonly spectrogram: Spectrogram;
  /** Root mean square of the first seconds, by which two notes are set equally loud. */
  readonly rms: number;
}

/** Strength over time and frequency, row by row from the lowest; 0 to 255 over 80 dB. */
export interface Spectrogram {
  readonly columns: number;
  readonly rows: number;
  readonly strength: Uint8Array;
  readonly seconds: number;
  readonly topHz: number;
}

/** What stretch of a sound is looked at. */
export interface PictureSpan {
  readonly onsetS: number;
  readonly endS: number;
  readonly windowFromS: number;
  readonly windowToS: number;
  readonly f0Hz: number;
}

const CURVE_POINTS = 700;
const DECAY_BLOCK_S = 0.02;
const RANGE_DB = 80;
const LOUD_S = 2;
const COLUMNS = 220;
const ROWS = 110;
const FRAME = 4096;

/** Where the spectrum ends: forty partials, at least 2 kHz, at most 10 kHz and half the rate. */
const topOf = (f0Hz: number, sampleRateHz: number): number => Math.min(10_000, 0.48 * sampleRateHz, Math.max(2000, 40 * f0Hz));

/** Works the pictures of a note out. Takes some tenths of a second, so it belongs in a worker; tells how far it has come. */
export function pictureOf(samples: Samples, span: PictureSpan, onProgress: (part: number) => void): SoundPicture {
  const { sampleRateHz } = samples;
  const mono = monoOf(samples);
  const cut = (fromS: number, toS: number): Float64Array => mono.subarray(Math.max(0, Math.round(fromS * sampleRateHz)), Math.round(toS * sampleRateHz));
  const topHz = topOf(span.f0Hz, sampleRateHz);
  const spectrum = spectrumCurve(cut(span.windowFromS, span.windowToS), sampleRateHz, topHz);
  onProgress(0.2);
  const decay = decayCurve(cut(span.onsetS - 0.1, span.endS), sampleRateHz);
  onProgress(0.3);
  const spectrogram = spectrogramOf(cut(span.onsetS - 0.1, span.endS), { sampleRateHz, topHz }, (part) => { onProgress(0.3 + 0.7 * part); });
  return { spectrum, decay, spectrogram, rms: rmsOf(cut(span.onsetS, span.onsetS + LOUD_S)) };
}

function monoOf({ channels }: Samples): Float64Array {
  const [first = new Float64Array(), ...others] = channels;
  return others.length === 0 ? first : first.map((value, at) => (value + others.reduce((sum, channel) => sum + (channel[at] ?? 0), 0)) / channels.length);
}

const rmsOf = (part: Float64Array): number => Math.sqrt(part.reduce((sum, x) => sum + x * x, 0) / Math.max(1, part.length));
const decibels = (power: number): number => 10 * Math.log10(Math.max(power, 1e-16));

/** Power by bin of a stretch under a Hann window, filled up with silence to a power of two. */
function powersOf(part: Float64Array, size = powerOfTwoFrom(part.length)): Float64Array {
  const padded = new Float64Array(size);
  part.forEach((x, at) => { padded[at] = x * (0.5 - 0.5 * Math.cos((2 * Math.PI * (at + 0.5)) / part.length)); });
  const { re, im } = realSpectrumOf(padded);
  return re.map((value, at) => value ** 2 + (im[at] ?? 0) ** 2);
}

/** The spectrum up to a frequency: of each piece of the axis its strongest bin, so that no partial is lost. */
function spectrumCurve(part: Float64Array, sampleRateHz: number, topHz: number): readonly CurvePoint[] {
  const powers = powersOf(part);
  const binHz = sampleRateHz / powerOfTwoFrom(part.length);
  const last = Math.min(powers.length, Math.floor(topHz / binHz));
  const points = Array.from({ length: CURVE_POINTS }, (_, index): CurvePoint => {
    const [from, to] = [index, index + 1].map((edge) => Math.floor((edge * last) / CURVE_POINTS));
    let best = from ?? 0;
    for (let bin = best; bin < Math.max(to ?? 0, best + 1); bin += 1) if ((powers[bin] ?? 0) > (powers[best] ?? 0)) best = bin;
    return { x: best * binHz, y: decibels(powers[best] ?? 0) };
  });
  const strongest = Math.max(...points.map(({ y }) => y));
  return points.map(({ x, y }) => ({ x, y: Math.max(-RANGE_DB - 10, y - strongest) }));
}

function decayCurve(part: Float64Array, sampleRateHz: number): readonly CurvePoint[] {
  const block = Math.round(DECAY_BLOCK_S * sampleRateHz);
  const count = Math.floor(part.length / block);
  const levels = Array.from({ length: count }, (_, index) => ({ x: index * DECAY_BLOCK_S - 0.1, y: decibels(rmsOf(part.subarray(index * block, (index + 1) * block)) ** 2) }));
  const thin = Math.max(1, Math.ceil(count / CURVE_POINTS));
  return levels.filter((_, index) => index % thin === 0);
}

function spectrogramOf(part: Float64Array, { sampleRateHz, topHz }: { readonly sampleRateHz: number; readonly topHz: number }, onProgress: (part: number) => void): Spectrogram {
  const columns = Math.max(1, Math.min(COLUMNS, Math.floor(part.length / (FRAME / 4))));
  const levels = new Float64Array(columns * ROWS);
  for (let column = 0; column < columns; column += 1) {
    const from = Math.floor((column * Math.max(0, part.length - FRAME)) / columns);
    const powers = powersOf(part.subarray(from, from + FRAME), FRAME);
    for (let row = 0; row < ROWS; row += 1) {
      const [low, high] = [row, row + 1].map((edge) => Math.floor((edge * topHz * FRAME) / (ROWS * sampleRateHz)));
      let most = 0;
      for (let bin = low ?? 0; bin < Math.max(high ?? 0, (low ?? 0) + 1); bin += 1) most = Math.max(most, powers[bin] ?? 0);
      levels[column * ROWS + row] = decibels(most);
    }
    if (column % 20 === 0) onProgress(column / columns);
  }
  const strongest = levels.reduce((most, level) => Math.max(most, level), -160);
  return { columns, rows: ROWS, strength: Uint8Array.from(levels, (level) => Math.max(0, Math.min(255, Math.round((255 * (level - strongest + RANGE_DB)) / RANGE_DB)))), seconds: part.length / sampleRateHz, topHz };
}
