import type { NoteQuestion, ScaleWire } from '#strings';

/** A wound note as ordered. */
export type OrderedWound = NoteQuestion & { readonly wire: Extract<ScaleWire, { readonly kind: 'wound' }> };
