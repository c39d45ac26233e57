import { type Hertz, hertz } from '#units';
import { type StiffNote, partialRatioOf } from './stiff-note.ts';

/** One note that sounds: its partial 1 and what its string makes of the others. */
export interface SoundingNote {
  readonly frequencyHz: Hertz;
  readonly string: StiffNote;
}

/**
 * Beats of an octave at partial 2k of the lower and k of the upper: f_k(upper) − f_2k(lower) in hertz, above nought where
 * the octave is wide. What is heard is its size: beats a second.
 *
 * @returns `undefined` where a list of partials does not reach so far.
 * @source FLETCHER-1964
 */
export function beatOf(lower: SoundingNote, upper: SoundingNote, k: number): Hertz | undefined {
  const [below, above] = [partialRatioOf(lower.string, 2 * k), partialRatioOf(upper.string, k)];
  return below === undefined || above === undefined ? undefined : hertz(upper.frequencyHz * above - lower.frequencyHz * below);
}
