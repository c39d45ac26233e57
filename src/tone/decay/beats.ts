import { meanOf, powerOfTwoFrom, realSpectrumOf } from '#numerics';

/** The strongest beat of a decay. */
export interface Beats {
  readonly rateHz: number;
  /** From trough to crest of the level. */
  readonly depthDb: number;
}

/** A beat must come round at least this often to be told from a bend. */
const LEAST_CYCLES = 1.5;
/** Of the wander of the level about its decay, the share one beat must explain. */
const LEAST_SHARE = 0.3;
const LEAST_DEPTH_DB = 1;

/**
 * Rate and depth of the strongest beat: the highest line in the spectrum of the level about its smooth decay, if it explains three tenths
 * of the wander and is a decibel deep. Depth: twice the amplitude of the line, under a Hann window 4·|X|/n.
 * @source OWN
 */
export function beatsOf(levelDb: readonly number[], modelDb: readonly number[], stepS: number): Beats | undefined {
  const wander = levelDb.map((value, index) => value - (modelDb[index] ?? 0));
  const mean = meanOf(wander);
  const count = wander.length;
  const windowed = wander.map((value, at) => (value - mean) * Math.sin((Math.PI * (at + 0.5)) / count) ** 2);
  const size = 4 * powerOfTwoFrom(count);
  const { re, im } = realSpectrumOf(windowed, size);
  const power = Array.from(re, (x, bin) => x * x + (im[bin] ?? 0) ** 2);
  const first = Math.ceil((LEAST_CYCLES * size) / count);
  const peak = power.reduce((best, value, bin) => (bin >= first && value > (power[best] ?? 0) ? bin : best), first);
  const amplitude = (4 * Math.sqrt(power[peak] ?? 0)) / count;
  const variance = meanOf(wander.map((value) => (value - mean) ** 2));
  const depthDb = 2 * amplitude;
  if (peak >= power.length - 1 || depthDb < LEAST_DEPTH_DB || amplitude ** 2 / 2 < LEAST_SHARE * variance) return undefined;
  return { rateHz: peak / (size * stepS), depthDb };
}
