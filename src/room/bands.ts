import { type Hertz, hertz } from '#units';

/** Names of the octave bands. */
export const octaveBands = [125, 250, 500, 1000, 2000, 4000] as const;

/** One number for each octave band. */
export type PerBand<T = number> = readonly [T, T, T, T, T, T];

/** The middle of an octave band, 1000·10^(3k/10): 125 is 125.89 Hz. @source IEC-61260 */
export function midbandOf(index: number): Hertz {
  return hertz(1000 * 10 ** ((3 * (index - octaveBands.indexOf(1000))) / 10));
}

/** Builds a row of the six bands. */
export function perBand<T>(at: (index: number) => T): PerBand<T> {
  return [at(0), at(1), at(2), at(3), at(4), at(5)];
}
