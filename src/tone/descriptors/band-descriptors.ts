import { type NoiseFloor, floorPowerOf } from './noise-floor.ts';
import type { Figure } from './partial-descriptors.ts';
import { sharpnessAt, thirdOctavePowersOf } from './sharpness.ts';
import { type ToneWindow, bandPowerOf } from './tone-window.ts';

/** The noise is known to a fifth of itself. */
const NOISE_DOUBT = 0.2;

/**
 * Centroid of the amplitude spectrum, Σ f·√P / Σ √P between two frequencies, Hz. Its uncertainty is what taking the noise off would change.
 * @source PEETERS-2011
 */
export function centroidOf({ power, binHz }: Pick<ToneWindow, 'power' | 'binHz'>, floor: NoiseFloor, fromHz: number, toHz: number): Figure {
  const [from, to] = [Math.max(1, Math.ceil(fromHz / binHz)), Math.min(power.length - 1, Math.floor(toHz / binHz))];
  const densityAt = stairsOf(floor);
  let [sum, moment, cleanSum, cleanMoment] = [0, 0, 0, 0];
  for (let bin = from; bin <= to; bin++) {
    const own = power[bin] ?? 0;
    const clean = Math.sqrt(Math.max(0, own - densityAt(bin * binHz) * binHz));
    sum += Math.sqrt(own);
    moment += Math.sqrt(own) * bin * binHz;
    cleanSum += clean;
    cleanMoment += clean * bin * binHz;
  }
  const value = sum === 0 ? 0 : moment / sum;
  return { value, uncertainty: cleanSum === 0 ? value : Math.abs(cleanMoment / cleanSum - value) };
}

/** Density of a floor at rising frequencies. */
function stairsOf({ bands }: NoiseFloor): (hz: number) => number {
  let place = 0;
  return (hz) => {
    while (place < bands.length - 1 && (bands[place]?.toHz ?? Infinity) < hz) place += 1;
    return bands[place]?.density ?? 0;
  };
}

/** The frequency the balance is taken about. */
const SPLIT_HZ = 2000;
const LOWEST_HZ = 30;

/** Upper end of every band. */
export const HIGHEST_HZ = 16_000;

/** Balance of high and low, or how far the weaker side stands over the noise where that is not enough. */
export type Balance = (Figure & { readonly overNoiseDb: number }) | { readonly overNoiseDb: number };

/** The weaker side must be as strong as the noise in it. */
export const LEAST_OVER_NOISE_DB = 0;

/**
 * High to low: 10·lg of the energy 2 to 16 kHz over that from 30 Hz to 2 kHz, the noise taken off both.
 * @source OWN
 */
export function balanceOf(window: ToneWindow, floor: NoiseFloor): Balance {
  const side = (fromHz: number, toHz: number): { readonly own: number; readonly noise: number } => {
    const noise = floorPowerOf(floor, fromHz, toHz);
    return { own: bandPowerOf(window, fromHz, toHz) - noise, noise };
  };
  const sides = [side(SPLIT_HZ, HIGHEST_HZ), side(LOWEST_HZ, SPLIT_HZ)] as const;
  const overNoiseDb = Math.min(...sides.map(({ own, noise }) => (own <= 0 ? -Infinity : noise === 0 ? 200 : 10 * Math.log10(own / noise))));
  if (overNoiseDb < LEAST_OVER_NOISE_DB) return { overNoiseDb: Math.max(overNoiseDb, -99) };
  const [high, low] = sides;
  return { value: 10 * Math.log10(high.own / low.own), uncertainty: (10 / Math.LN10) * NOISE_DOUBT * Math.hypot(high.noise / high.own, low.noise / low.own), overNoiseDb };
}

/** Sharpness at the assumed level, acum; its uncertainty is what taking the noise off would change. */
export function sharpnessFigureOf({ power, binHz }: ToneWindow, floor: NoiseFloor): Figure {
  const densityAt = stairsOf(floor);
  const clean = power.map((own, bin) => Math.max(0, own - densityAt(bin * binHz) * binHz));
  const [value, without] = [power, clean].map((list) => sharpnessAt(thirdOctavePowersOf(list, binHz), bandPowerOf({ power: list, binHz }, 20, HIGHEST_HZ)));
  return { value: value ?? 0, uncertainty: Math.abs((without ?? 0) - (value ?? 0)) };
}
