import type { Hertz, Ratio } from '#units';
import { plainFiguresOf } from './plain-string.ts';
import type { ScaleNote } from './scale.ts';
import { woundFiguresOf } from './wound-string.ts';

/** Partials of the string of a note: a plain one by its B at the exact tension, a wound one by its list. */
export type NotePartials = { readonly inharmonicityB: Ratio } | { readonly partialsHz: readonly Hertz[] };

/**
 * What the string of a note sounds like, as a tuning asks for it.
 *
 * @returns `undefined` while length or wire is not known, or where the sizes make no string.
 * @source FLETCHER-1964 @source WITTRICK-WILLIAMS-1971
 */
export function partialsOfNote({ frequencyHz, speakingLengthMm, wire }: ScaleNote, count: number): NotePartials | undefined {
  if (speakingLengthMm === undefined || wire === undefined) return undefined;
  if (wire.kind === 'plain') {
    const { exactTensionN, exactInharmonicityB } = plainFiguresOf({ frequencyHz, speakingLengthMm, diameterMm: wire.diameterMm });
    return exactTensionN > 0 ? { inharmonicityB: exactInharmonicityB } : undefined;
  }
  const { kind: _, ...winding } = wire;
  const result = woundFiguresOf({ frequencyHz, speakingLengthMm, ...winding }, count);
  return result.ok ? { partialsHz: result.value.partialsHz } : undefined;
}
