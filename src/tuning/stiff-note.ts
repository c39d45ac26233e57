import type { Hertz, Ratio } from '#units';

/** Partials of one note: by the inharmonicity of its string, or one by one, which a wound string needs. */
export type StiffNote = { readonly inharmonicityB: Ratio } | { readonly partialsHz: readonly Hertz[] };

/**
 * Partial n over partial 1: n·√((1 + B·n²)/(1 + B)), or as listed. B at least 0, n from 1.
 *
 * @returns `undefined` where the list does not reach so far.
 * @source FLETCHER-1964
 */
export function partialRatioOf(note: StiffNote, n: number): number | undefined {
  if ('inharmonicityB' in note) return n * Math.sqrt((1 + note.inharmonicityB * n * n) / (1 + note.inharmonicityB));
  const [first, partial] = [note.partialsHz[0], note.partialsHz[n - 1]];
  return first === undefined || partial === undefined ? undefined : partial / first;
}
