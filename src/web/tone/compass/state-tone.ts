import { type KeyNumber, type State, states } from '#instrument';
import type { PlottedNote, ToneFigure, ToneValue } from '#plot';
import { type HeardNote, heardIn } from '#workshop';
import type { WorkedRecording } from '../use-recordings.ts';

/** A note with the recording it was heard in. */
export interface PlacedNote {
  readonly worked: WorkedRecording;
  readonly heard: HeardNote;
}

/** How one state sounds: of each key the recording that came last. */
export interface StateTone {
  readonly state: State;
  readonly byKey: ReadonlyMap<KeyNumber, PlacedNote>;
  readonly notes: readonly PlottedNote[];
  /** Where the microphones stood; more than one place, or none stated, cannot be compared. */
  readonly places: ReadonlySet<string>;
}

/** How each recorded state sounds, as found first. A ladder tells of one key at many levels and is left to the panel of that key. */
export function stateTonesOf(recordings: readonly WorkedRecording[]): readonly StateTone[] {
  return states.flatMap((state) => {
    const own = recordings.filter(({ recording, analysis }) => recording.state === state && recording.contents !== 'ladder' && analysis !== undefined);
    const placed = own.flatMap((worked) => (worked.analysis === undefined ? [] : (heardIn(worked.recording, worked.analysis)?.notes ?? [])).map((heard): PlacedNote => ({ worked, heard })));
    const byKey = new Map(placed.filter(({ heard }) => heard.note !== undefined).flatMap((one) => (one.heard.key === undefined ? [] : [[one.heard.key, one] as const])));
    if (byKey.size === 0) return [];
    const notes = [...byKey].toSorted(([a], [b]) => a - b).map(([key, { heard }]): PlottedNote => ({ key, figures: figuresOf(heard) }));
    return [{ state, byKey, notes, places: new Set([...byKey.values()].map(({ worked }) => worked.recording.place)) }];
  });
}

/** The figures of a note that are plotted over the keys. A note told as another key than it was heard as gives none: one of the two is wrong. */
export function figuresOf({ note, key, heardKey, decay, descriptors, levelDb }: HeardNote): Partial<Record<ToneFigure, ToneValue>> {
  if (note === undefined || key !== heardKey) return {};
  const early = decay?.edt10;
  return {
    ...(descriptors?.harmonicCentroid === undefined ? {} : { brightness: descriptors.harmonicCentroid }),
    ...(descriptors?.balanceDb === undefined ? {} : { balance: descriptors.balanceDb }),
    ...(levelDb === undefined ? {} : { level: { value: levelDb } }),
    ...(early === undefined ? {} : { sustain: { value: early.seconds, uncertainty: early.uncertaintyS } }),
    ...(note.inharmonicityB === undefined || note.inharmonicityB <= 0 ? {} : { inharmonicity: { value: note.inharmonicityB, uncertainty: note.inharmonicityUncertainty } }),
    pitch: { value: note.offsetCents, uncertainty: (1200 / Math.LN2) * (note.f0UncertaintyHz / note.f0Hz) },
  };
}

/** True where all recordings of two states were made from one stated place: only then may brightness and level be compared. */
export function isComparable(tones: readonly StateTone[]): boolean {
  const places = new Set(tones.flatMap((tone) => [...tone.places]));
  return places.size === 1 && !places.has('');
}
