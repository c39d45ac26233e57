/** Power over time from the beginning of the decay on, noise included, and the power of the noise. */
export interface PowerCurve {
  readonly power: Float64Array;
  readonly stepS: number;
  readonly noise: number;
  /** Standard uncertainty of the noise, as a share of it. */
  readonly noiseDoubt: number;
  /** Points the filter takes to settle: by so much the beginning is in doubt. */
  readonly settle: number;
}

/** Where a curve stops telling of the note: its place, and the power of the note there. */
export interface Bottom {
  readonly end: number;
  readonly power: number;
}

/** A reverberation-like time with its standard uncertainty. */
export interface DecayTime {
  readonly seconds: number;
  readonly uncertaintyS: number;
}

const dB = (ratio: number): number => 10 * Math.log10(ratio);

/** Mean of the power over `count` points from a place on. */
export function meanPower(power: Float64Array, from: number, count: number): number {
  const part = power.subarray(Math.max(0, from), Math.max(0, from) + count);
  return part.length === 0 ? 0 : part.reduce((sum, x) => sum + x, 0) / part.length;
}

/** Averaging for the search of the bottom: long enough to smooth the noise of a band, short beside any decay. */
const BOTTOM_AVERAGE_S = 0.05;

/** First place where the averaged power comes down to twice the noise, else the end; and the note’s own power there. */
export function bottomOf({ power, stepS, noise }: PowerCurve): Bottom {
  const span = Math.max(1, Math.round(BOTTOM_AVERAGE_S / stepS));
  for (let at = 0; at + span <= power.length; at += span) {
    if (meanPower(power, at, span) <= 2 * noise) return { end: at, power: noise };
  }
  return { end: power.length, power: Math.max(noise, meanPower(power, power.length - span, span) - noise) };
}

/** Decibels from the beginning of the decay to its bottom, or to the noise where the bottom lies in it. */
export function rangeDbOf(curve: PowerCurve, bottom: Bottom): number {
  const first = (curve.power[0] ?? 0) - curve.noise;
  return first <= 0 || bottom.power <= 0 ? 0 : dB(first / bottom.power);
}

/**
 * Energy decay by backward integration: L(t) = 10·lg(∫ₜ^end (P − N) dt + C), 0 dB at the beginning, C the energy beyond the end if
 * the decay goes on as it did over the last decibels.
 * @source SCHROEDER-1965
 * @source ISO-3382
 */
export function energyDecayOf({ power, stepS, noise }: PowerCurve, { end }: Bottom, beyond: number): Float64Array {
  const level = new Float64Array(end);
  let sum = beyond;
  for (let at = end - 1; at >= 0; at--) {
    sum += ((power[at] ?? 0) - noise) * stepS;
    level[at] = sum;
  }
  const whole = level[0] ?? 1;
  return level.map((energy) => (energy <= 0 ? -Infinity : dB(energy / whole)));
}

/** Energy beyond the end: power there times the time constant of the last ten decibels or of the whole, whichever is to be had. */
export function energyBeyond(curve: PowerCurve, { end }: Bottom): number {
  const { power, stepS, noise } = curve;
  const span = Math.max(1, Math.round(BOTTOM_AVERAGE_S / stepS));
  const at = (from: number): number => Math.max(meanPower(power, from, span) - noise, 0);
  const last = at(end - span);
  let from = end - 2 * span;
  while (from > 0 && at(from) < 10 * last) from -= span;
  const fall = Math.log(at(Math.max(0, from)) / last);
  return last > 0 && fall > 0 ? (last * ((end - span - Math.max(0, from)) * stepS)) / fall : 0;
}

/** Least-squares line through a stretch of a list: slope per step, mean, standard deviation about it, share explained (R²). */
export function lineThrough(values: ArrayLike<number>, from: number, to: number): { readonly slope: number; readonly mean: number; readonly residual: number; readonly explained: number; readonly count: number } {
  const count = to - from;
  const meanAt = (from + to - 1) / 2;
  let [sum, xx, xy] = [0, 0, 0];
  for (let at = from; at < to; at++) sum += values[at] ?? 0;
  const mean = sum / count;
  for (let at = from; at < to; at++) {
    xx += (at - meanAt) ** 2;
    xy += (at - meanAt) * ((values[at] ?? 0) - mean);
  }
  const slope = xy / xx;
  let [residual, total] = [0, 0];
  for (let at = from; at < to; at++) {
    residual += ((values[at] ?? 0) - mean - slope * (at - meanAt)) ** 2;
    total += ((values[at] ?? 0) - mean) ** 2;
  }
  return { slope, mean, residual: Math.sqrt(residual / Math.max(1, count - 2)), explained: total === 0 ? 0 : 1 - residual / total, count };
}

/** Time for 60 dB at the slope between two levels of an energy decay; undefined where it does not come down so far. */
export function timeBetween(level: Float64Array, stepS: number, fromDb: number, toDb: number): number | undefined {
  const from = level.findIndex((value) => value <= fromDb);
  const to = level.findIndex((value) => value < toDb);
  if (from < 0 || to < 0 || to - from < 3) return undefined;
  const { slope } = lineThrough(level, from, to);
  return slope < 0 ? (-60 / slope) * stepS : undefined;
}

/** Share of the energy beyond the end that counts as its standard uncertainty. */
const BEYOND_DOUBT = 0.5;

/**
 * Time for 60 dB from the energy decay between two levels, with the uncertainty that three things leave: the noise, the energy beyond
 * the end, and the beginning (begun one settling of the filter later, the range lies elsewhere on a curve that bends or beats).
 * @source ISO-3382
 * @source JCGM-100
 */
export function decayTimeOf(curve: PowerCurve, bottom: Bottom, fromDb: number, toDb: number): DecayTime | undefined {
  const beyond = energyBeyond(curve, bottom);
  const timed = (noise: number, tail: number, skip = 0): number | undefined =>
    timeBetween(energyDecayOf({ ...curve, noise, power: curve.power.subarray(skip) }, { ...bottom, end: bottom.end - skip }, tail), curve.stepS, fromDb, toDb);
  const seconds = timed(curve.noise, beyond);
  if (seconds === undefined) return undefined;
  const off = (other: number | undefined): number => (other === undefined ? 0 : other - seconds);
  const parts = [off(timed(curve.noise * (1 + curve.noiseDoubt), beyond)), off(timed(curve.noise, beyond * (1 + BEYOND_DOUBT))), off(timed(curve.noise, beyond, curve.settle))];
  return { seconds, uncertaintyS: Math.hypot(...parts) };
}
