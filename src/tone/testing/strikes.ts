import type { Samples } from '#numerics';
import { bestCombOf } from '../comb.ts';
import type { HeardNote, PartialPlace } from '../heard-note.ts';
import { soundingOf } from '../onset.ts';
import { stringOf } from '../partials.ts';
import { peaksOf, spectrumOfSpan } from '../spectrum.ts';
import { recordedStrike } from './recordings.ts';

/** Pitch and partials of a string as one strike tells them. */
export interface KnownString {
  readonly f0Hz: number;
  readonly partials: readonly PartialPlace[];
}

/** Listens to a strike. */
export function knownStringOf(samples: Samples): KnownString {
  const sounding = soundingOf(samples);
  if (sounding === undefined) throw new Error('silence');
  const spectrum = spectrumOfSpan(samples, { fromS: sounding.onsetS + 0.05, toS: Math.min(sounding.endS, sounding.onsetS + 3) });
  const comb = bestCombOf(peaksOf(spectrum));
  if (comb === undefined) throw new Error('no note');
  const { partials, fit } = stringOf(samples, sounding, spectrum, comb);
  return { f0Hz: fit?.f0Hz ?? comb.f0Hz, partials };
}

/** A strike of a string that is known. */
export async function strikeOf(note: string, layer: number, string: KnownString): Promise<HeardNote> {
  const samples = await recordedStrike(note, layer);
  return { samples, onsetS: soundingOf(samples)?.onsetS ?? 0, ...string };
}

/** Kendall’s τ of values against their own order: concordant less discordant pairs over all pairs. @source KENDALL-1938 */
export function kendallTauOf(values: readonly number[]): number {
  let [sum, pairs] = [0, 0];
  for (const [later, value] of values.entries()) {
    for (const earlier of values.slice(0, later)) sum += Math.sign(value - earlier);
    pairs += later;
  }
  return sum / pairs;
}
