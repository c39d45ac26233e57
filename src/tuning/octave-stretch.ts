import { type Cents, cents } from '#units';
import { type StiffNote, partialRatioOf } from './stiff-note.ts';

/**
 * How far the upper note of an octave lies above twice the lower when partial 2k of the lower and partial k of the upper
 * do not beat: 1200·log₂(ρ₂ₖ(lower)/(2·ρₖ(upper))), ρₙ partial n over partial 1. With one B each,
 * 600·log₂[(1 + 4k²·B_l)(1 + B_u)/((1 + B_l)(1 + k²·B_u))]. Cents; may be below nought high in the treble.
 *
 * @returns `undefined` where a list of partials does not reach so far.
 * @source FLETCHER-1964 @source OWN
 */
export function stretchOf(lower: StiffNote, upper: StiffNote, k: number): Cents | undefined {
  const [below, above] = [partialRatioOf(lower, 2 * k), partialRatioOf(upper, k)];
  return below === undefined || above === undefined ? undefined : cents(1200 * Math.log2(below / (2 * above)));
}
