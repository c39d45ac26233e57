import type { SoundingNote } from '../tone-note.ts';

/** What is told of the sound over the keys: one figure each, of one note. */
export const toneFigures = ['brightness', 'balance', 'level', 'sustain', 'inharmonicity', 'pitch'] as const;
export type ToneFigure = (typeof toneFigures)[number];

/** A figure with its standard uncertainty, where it has one. */
export interface ToneValue {
  readonly value: number;
  readonly uncertainty?: number | undefined;
}

/** The figures of a note, as far as it has them. */
export type ToneFigures = Readonly<Partial<Record<ToneFigure, ToneValue>>>;

/** Cents of a whole octave over ln 2: u(cents) = 1200/ln 2 · u(f)/f. */
const CENTS_OF_SHARE = 1200 / Math.LN2;

/** Brightness (harmonic centroid), balance at 2 kHz (dB), level (dB), sustain (early decay time, s), inharmonicity B, pitch off equal temperament (cents) of a note. */
export function toneFiguresOf({ decay, descriptors, loudnessDb, inharmonicityB, inharmonicityUncertainty, offsetCents, f0Hz, f0UncertaintyHz }: SoundingNote): ToneFigures {
  return {
    ...told('brightness', descriptors?.harmonicCentroid, descriptors?.harmonicCentroidUncertainty), ...told('balance', descriptors?.balanceDb, descriptors?.balanceUncertaintyDb),
    level: { value: loudnessDb }, ...told('sustain', decay?.edt10S, decay?.edt10UncertaintyS),
    ...told('inharmonicity', inharmonicityB !== undefined && inharmonicityB > 0 ? inharmonicityB : undefined, inharmonicityUncertainty),
    pitch: { value: offsetCents, uncertainty: CENTS_OF_SHARE * (f0UncertaintyHz / f0Hz) },
  };
}

function told(figure: ToneFigure, value: number | undefined, uncertainty: number | undefined): ToneFigures {
  return value === undefined ? {} : { [figure]: { value, uncertainty } };
}
