import { type Loudness, THIRD_OCTAVES, steadyLoudnessOf } from './loudness.ts';

/** The level a sound is set to before its sharpness is worked out, since no recording says how loud it was. */
export const ASSUMED_LEVEL_DB = 70;

/**
 * Sharpness S = 0.11·∫N′(z)·g(z)·z dz / N in acum; g = 1 up to 15.8 Bark, 0.15·e^(0.42·(z − 15.8)) + 0.85 above. 0 where nothing is heard.
 * @source DIN-45692
 */
export function sharpnessOf({ sone, specific }: Loudness): number {
  if (sone <= 0) return 0;
  const moment = specific.reduce((sum, own, index) => {
    const bark = (index + 1) / 10;
    const weight = bark <= 15.8 ? 1 : 0.15 * Math.exp(0.42 * (bark - 15.8)) + 0.85;
    return sum + own * weight * bark * 0.1;
  }, 0);
  return (0.11 * moment) / sone;
}

/** Mid-frequencies of the third-octave bands 25 Hz to 12.5 kHz, base ten. @source IEC-61260-1 */
const middlesHz: readonly number[] = Array.from({ length: THIRD_OCTAVES }, (_, index) => 10 ** ((index + 14) / 10));

/** Width of a third octave over its mid-frequency: 10^(1/20) − 10^(−1/20). */
const RELATIVE_WIDTH = 10 ** 0.05 - 10 ** -0.05;

/** Skirts of a filter are followed so far from its mid-frequency: there it passes less than 10⁻⁵. */
const REACH = 3;

/**
 * Powers in the third octaves of a power spectrum, through filters with the skirts of a Butterworth band-pass of the sixth order:
 * |H|² = 1/(1 + ((f/fm − fm/f)/b)⁶), b the relative width. Bins are `binHz` apart from 0 on.
 * @source IEC-61260-1
 */
export function thirdOctavePowersOf(power: ArrayLike<number>, binHz: number): readonly number[] {
  return middlesHz.map((middle) => {
    const [from, to] = [Math.max(1, Math.ceil(middle / REACH / binHz)), Math.min(power.length - 1, Math.floor((middle * REACH) / binHz))];
    let sum = 0;
    for (let bin = from; bin <= to; bin++) {
      const ratio = (bin * binHz) / middle;
      const off = ((ratio - 1 / ratio) / RELATIVE_WIDTH) ** 2;
      sum += (power[bin] ?? 0) / (1 + off * off * off);
    }
    return sum;
  });
}

/** Sharpness of a sound whose powers in the third octaves are these and whose whole power is set to the assumed level. Gain cancels. */
export function sharpnessAt(powers: readonly number[], whole: number, levelDb: number = ASSUMED_LEVEL_DB): number {
  return whole <= 0 ? 0 : sharpnessOf(steadyLoudnessOf(powers.map((power) => levelDb + 10 * Math.log10(Math.max(power / whole, 1e-30)))));
}
