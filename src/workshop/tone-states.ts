import { type KeyNumber, type Recording, type State, states } from '#instrument';
import { type ComparedStrike, type ToneFigures, type ToneState, toneFiguresOf } from '#tone';
import { type Analysis, soundOf } from './analysis.ts';
import { type HeardNote, heardIn } from './heard-notes.ts';

/** A recording with what was last worked out of it. */
export interface WorkedSound {
  readonly recording: Recording;
  readonly analysis: Analysis | undefined;
}

/** A note with the recording it was heard in. */
export interface PlacedNote {
  readonly recording: Recording;
  readonly heard: HeardNote & { readonly note: NonNullable<HeardNote['note']> };
}

/** How one state sounds. */
export interface StateTone {
  readonly state: State;
  /** Of each key the note that came last; a ladder, which tells of one key at many levels, is left out. */
  readonly byKey: ReadonlyMap<KeyNumber, PlacedNote>;
  /** The figures of these notes by key, the lowest first; of a note told as another key than it was heard as none: one of the two is wrong. */
  readonly notes: readonly { readonly key: KeyNumber; readonly figures: ToneFigures }[];
  /** Every strike of a key heard as told, ladders too. */
  readonly strikes: readonly PlacedNote[];
  /** Where the microphones stood; more than one place, or none stated, cannot be compared. */
  readonly places: ReadonlySet<string>;
}

/** What was last worked out of a recording by the method it asks for, for the key it is told to be where that was done. */
export function analysisOf(recording: Recording, analyses: readonly Analysis[]): Analysis | undefined {
  const { hash } = soundOf(recording);
  const own = analyses.filter((analysis) => analysis.hash === hash && (analysis.method === 'tone-note') === (recording.contents === 'note'));
  return own.find(({ input }) => input.key === recording.key) ?? own[0];
}

/** Recordings with what was last worked out of them. */
export function workedSoundsOf(recordings: readonly Recording[], analyses: readonly Analysis[]): readonly WorkedSound[] {
  return recordings.map((recording) => ({ recording, analysis: analysisOf(recording, analyses) }));
}

/** How each recorded state sounds, as found first; a state no note of which was heard is left out. */
export function stateTonesOf(sounds: readonly WorkedSound[]): readonly StateTone[] {
  return states.flatMap((state) => {
    const placed = sounds.filter(({ recording }) => recording.state === state).flatMap(placedIn);
    const strikes = placed.filter(({ heard: { key, heardKey } }) => key === heardKey);
    const byKey = new Map(placed.filter(({ recording }) => recording.contents !== 'ladder').flatMap((one) => (one.heard.key === undefined ? [] : [[one.heard.key, one] as const])));
    if (byKey.size === 0 && strikes.length === 0) return [];
    const notes = [...byKey].toSorted(([a], [b]) => a - b).map(([key, { heard }]) => ({ key, figures: heard.heardKey === key ? toneFiguresOf(heard.note) : {} }));
    return [{ state, byKey, notes, strikes, places: new Set([...byKey.values(), ...strikes].map(({ recording }) => recording.place)) }];
  });
}

function placedIn({ recording, analysis }: WorkedSound): readonly PlacedNote[] {
  const heard = analysis === undefined ? undefined : heardIn(recording, analysis);
  return (heard?.notes ?? []).flatMap((one) => (one.note === undefined ? [] : [{ recording, heard: { ...one, note: one.note } }]));
}

/** True where all recordings of two states were made from one stated place: only then may brightness and level be compared. */
export function isComparable(tones: readonly StateTone[]): boolean {
  const places = new Set(tones.flatMap((tone) => [...tone.places]));
  return places.size === 1 && !places.has('');
}

/** A state as it is compared, all strikes of each key; where more than one place or device was used, or no place told, there is none. */
export function comparedStateOf({ strikes }: StateTone): ToneState | undefined {
  const [places, devices] = (['place', 'device'] as const).map((field) => new Set(strikes.map(({ recording }) => recording[field])));
  const [place] = places ?? [];
  if (place === undefined || place === '' || places?.size !== 1 || devices?.size !== 1) return undefined;
  return { microphonePlace: place, recordedWith: [...devices][0] ?? '', strikes: strikes.flatMap(comparedStrikeOf) };
}

function comparedStrikeOf({ heard: { key, note } }: PlacedNote): readonly ComparedStrike[] {
  return key === undefined ? [] : [{ key, levelDb: note.loudnessDb, partials: note.partials.map(({ n, levelDb }) => ({ n, levelDb })), decayS: note.decay?.edt10S }];
}
