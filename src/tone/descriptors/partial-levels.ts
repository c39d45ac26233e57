import type { PartialPlace } from '../heard-note.ts';
import { noiseAbout } from '../decay/noise.ts';
import { type ToneWindow, bandPowerOf } from './tone-window.ts';

/** Amplitude of a partial in the window, and its standard uncertainty from the noise about it. */
export interface PartialLevel extends PartialPlace {
  readonly amplitude: number;
  readonly doubt: number;
}

const HIGHEST_N = 40;
const HIGHEST_HZ = 10_000;
/** A partial’s power is gathered at least this far about it: strings of a unison stand apart. */
const LEAST_SHARE = 0.004;
/** Lobe of a Hann window, in widths 1/T. */
const LOBE = 2;

/**
 * Amplitudes of the partials up to the 40th and 10 kHz: power in the lobe about each, less that of as wide a piece of the noise between
 * partials; √2·P of the channels together. Partials lost in the noise are left out.
 */
export function partialLevelsOf(window: ToneWindow, partials: readonly PartialPlace[], f0Hz: number): readonly PartialLevel[] {
  const densities = { channels: window.channelPowers.map((power) => power.map((value) => value / window.binHz)), binHz: window.binHz };
  return partials.filter(({ n, frequencyHz }) => n <= HIGHEST_N && frequencyHz < HIGHEST_HZ).flatMap(({ n, frequencyHz }) => {
    const half = Math.min(f0Hz / 4, Math.max(LOBE / window.seconds, LEAST_SHARE * frequencyHz));
    const gathered = bandPowerOf(window, frequencyHz - half, frequencyHz + half);
    const noise = noiseAbout(densities, frequencyHz, f0Hz).density * 2 * half;
    const own = gathered - noise;
    if (own <= noise) return [];
    const amplitude = Math.sqrt(2 * own);
    return [{ n, frequencyHz, amplitude, doubt: Math.sqrt(2 * own * noise + noise ** 2) / amplitude }];
  });
}
