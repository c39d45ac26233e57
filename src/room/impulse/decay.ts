import { linearFitOf, meanOf } from '#numerics';
import { blockLevelsOf } from './block-levels.ts';

/** What one band of one impulse tells. Times in seconds. */
export interface BandDecay {
  readonly edtS?: number;
  readonly t20S?: number;
  readonly t30S?: number;
  /** From the peak down to the noise, decibels. */
  readonly dynamicDb: number;
  /** How much longer the late decay is than the early: 100·(T30/T20 − 1). */
  readonly curvaturePct?: number;
  /** How far T20’s stretch is from a straight line: 1000·(1 − r²). */
  readonly nonlinearity?: number;
  readonly doubts: readonly DecayDoubt[];
}

/** Why a time is not told, or is to be taken with care. */
export const decayDoubts = ['no-impulse', 'too-much-noise-for-t20', 'too-much-noise-for-t30', 'too-short-for-band', 'bent', 'uneven'] as const;
export type DecayDoubt = (typeof decayDoubts)[number];

/** Peak over noise that a stretch asks for: down to its end, and 10 dB clear of the noise. @source ISO-3382-2 */
const NEEDED_DB = { edt: 20, t20: 35, t30: 45 } as const;
/** Bandwidth times reverberation below which the filter itself is heard, run backwards. @source JACOBSEN-1987 */
const LEAST_BT = 4;
const MOST_CURVATURE_PCT = 10;
const MOST_NONLINEARITY = 10;
/** Energies are smoothed over so many seconds to find where the decay meets the noise. */
const SMOOTH_S = 0.01;
const KNEE_ROUNDS = 6;

interface Smoothed {
  readonly levels: readonly number[];
  readonly stepS: number;
}

/** Decay of a squared, filtered impulse that begins at its first sample. */
export function bandDecayOf(energies: Float64Array, sampleRateHz: number, bandwidthHz: number): BandDecay {
  const smoothed = smoothedOf(energies, sampleRateHz);
  const knee = kneeOf(smoothed);
  if (knee === undefined) return { dynamicDb: 0, doubts: ['no-impulse'] };
  const curve = summedBackwards(energies, sampleRateHz, knee);
  const time = (from: number, to: number) => timeOf(curve, sampleRateHz, from, to);
  const { dynamicDb } = knee;
  const edt = dynamicDb >= NEEDED_DB.edt ? time(0, -10) : undefined;
  const t20 = dynamicDb >= NEEDED_DB.t20 ? time(-5, -25) : undefined;
  const t30 = dynamicDb >= NEEDED_DB.t30 ? time(-5, -35) : undefined;
  return judged({ dynamicDb, edt, t20, t30 }, bandwidthHz);
}

interface Line {
  readonly seconds: number;
  readonly nonlinearity: number;
}

function judged({ dynamicDb, edt, t20, t30 }: { readonly dynamicDb: number; readonly edt: Line | undefined; readonly t20: Line | undefined; readonly t30: Line | undefined }, bandwidthHz: number): BandDecay {
  const told = (line: Line | undefined): line is Line => line !== undefined && line.seconds * bandwidthHz >= LEAST_BT;
  const curvaturePct = told(t20) && told(t30) ? 100 * (t30.seconds / t20.seconds - 1) : undefined;
  const doubts: DecayDoubt[] = [];
  if (t20 === undefined) doubts.push('too-much-noise-for-t20');
  if (t30 === undefined) doubts.push('too-much-noise-for-t30');
  if ([edt, t20, t30].some((line) => line !== undefined && !told(line))) doubts.push('too-short-for-band');
  if (curvaturePct !== undefined && Math.abs(curvaturePct) > MOST_CURVATURE_PCT) doubts.push('bent');
  if (told(t20) && t20.nonlinearity > MOST_NONLINEARITY) doubts.push('uneven');
  return {
    dynamicDb, doubts,
    ...(told(edt) ? { edtS: edt.seconds } : {}), ...(told(t20) ? { t20S: t20.seconds, nonlinearity: t20.nonlinearity } : {}),
    ...(told(t30) ? { t30S: t30.seconds } : {}), ...(curvaturePct === undefined ? {} : { curvaturePct }),
  };
}

function smoothedOf(energies: Float64Array, sampleRateHz: number): Smoothed {
  const step = Math.max(1, Math.round(SMOOTH_S * sampleRateHz));
  return { stepS: step / sampleRateHz, levels: blockLevelsOf(energies.length, step, (at) => energies[at] ?? 0) };
}

interface Knee {
  /** Where the decay meets the noise, seconds from the first sample. */
  readonly atS: number;
  /** Decibels a second of the late decay, below nought. */
  readonly slope: number;
  /** Energy of the decay there, mean of a sample. */
  readonly energy: number;
  readonly dynamicDb: number;
}

/** Where the late decay, drawn on as a line, meets the noise; found by going round until it stays. @source LUNDEBY-1995 */
function kneeOf({ levels, stepS }: Smoothed): Knee | undefined {
  const peak = levels.reduce((highest, level, index) => (level > (levels[highest] ?? 0) ? index : highest), 0);
  const tail = levels.slice(-Math.max(3, Math.floor(levels.length / 10)));
  let noise = meanOf(tail);
  let knee: Knee | undefined;
  for (let round = 0; round < KNEE_ROUNDS; round += 1) {
    const line = lateLineOf(levels, stepS, peak, noise, knee === undefined ? peak : lateFrom(levels, peak, noise));
    if (line === undefined) return knee;
    const atS = Math.min(levels.length * stepS, (noise - line.offset) / line.slope);
    knee = { atS, slope: line.slope, energy: 10 ** ((line.offset + line.slope * atS) / 10), dynamicDb: (levels[peak] ?? 0) - noise };
    const beyond = levels.slice(Math.min(levels.length - tail.length, Math.ceil((atS - 5 / line.slope) / stepS)));
    noise = meanOf(beyond.length >= 3 ? beyond : tail);
  }
  return knee;
}

/** The first step from which the level stays within 25 dB of the noise. */
const lateFrom = (levels: readonly number[], peak: number, noise: number): number => {
  const from = levels.findIndex((level, index) => index >= peak && level < noise + 25);
  return from < 0 ? peak : from;
};

/** A straight line through the levels from a step down to 8 dB over the noise. */
function lateLineOf(levels: readonly number[], stepS: number, peak: number, noise: number, from: number): { readonly slope: number; readonly offset: number } | undefined {
  const end = levels.findIndex((level, index) => index > peak && level < noise + 8);
  const stretch = (start: number) => levels.slice(start, end < 0 ? levels.length : end).map((level, index) => [(start + index + 0.5) * stepS, level] as const);
  const points = stretch(from).length >= 4 ? stretch(from) : stretch(peak);
  const fit = linearFitOf(points.map(([time]) => [1, time]), points.map(([, level]) => level));
  const [offset = 0, slope = 0] = fit?.coefficients ?? [];
  return slope < 0 ? { slope, offset } : undefined;
}

/** Energy still to come, as levels under the whole: summed backwards from the knee, what lies beyond added as its line has it. @source SCHROEDER-1965, ISO-3382-2 */
function summedBackwards(energies: Float64Array, sampleRateHz: number, { atS, slope, energy }: Knee): Float64Array {
  const count = Math.min(energies.length, Math.max(2, Math.round(atS * sampleRateHz)));
  const curve = new Float64Array(count);
  let sum = (energy * sampleRateHz * 10) / (-slope * Math.LN10);
  for (let at = count - 1; at >= 0; at -= 1) {
    sum += energies[at] ?? 0;
    curve[at] = sum;
  }
  const whole = curve[0] ?? 1;
  return curve.map((left) => 10 * Math.log10(left / whole));
}

/** Time for 60 dB from a straight line between two levels of the curve, and how straight it is. @source ISO-3382-2 */
function timeOf(curve: Float64Array, sampleRateHz: number, from: number, to: number): Line | undefined {
  const first = curve.findIndex((level) => level <= from);
  const last = curve.findIndex((level) => level < to);
  if (first < 0 || last < first + 3) return undefined;
  const stride = Math.max(1, Math.floor((last - first) / 2000));
  const rows: (readonly [number, number])[] = [];
  for (let at = first; at < last; at += stride) rows.push([at / sampleRateHz, curve[at] ?? 0]);
  const fit = linearFitOf(rows.map(([time]) => [1, time]), rows.map(([, level]) => level));
  const slope = fit?.coefficients[1];
  if (fit === undefined || slope === undefined || !(slope < 0)) return undefined;
  const mean = meanOf(rows.map(([, level]) => level));
  const spread = rows.reduce((sum, [, level]) => sum + (level - mean) ** 2, 0);
  return { seconds: -60 / slope, nonlinearity: (1000 * fit.residual ** 2 * fit.freedom) / spread };
}
