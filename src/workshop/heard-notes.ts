import { type KeyNumber, type Recording, type State, keyCountOf } from '#instrument';
import type { Samples } from '#numerics';
import { type DoubtfulPlace, type NothingHeard, type SoundingNote, type SoundingTake, toneNoteOf, toneRunOf } from '#tone';
import { type Analysis, type AnalysisInput, type AnalysisMethod, analysisVersions } from './analysis.ts';

/** A note heard in a recording. `key` is the one told of it, or else the one heard; `heardKey` the one heard alone. */
export interface HeardNote {
  readonly recordingId: string;
  readonly state: State;
  readonly key: KeyNumber | undefined;
  readonly heardKey: KeyNumber | undefined;
  /** Nothing where no note was recognised; then `nothing` says why. */
  readonly note: SoundingNote | undefined;
  readonly nothing: NothingHeard | undefined;
}

/** What was heard in a recording; of a long take also which keys are missing or came too often, and where to listen again. */
export interface Heard {
  readonly notes: readonly HeardNote[];
  readonly missingKeys: readonly KeyNumber[];
  readonly duplicateKeys: readonly KeyNumber[];
  readonly doubtful: readonly DoubtfulPlace[];
}

/** What a method works out of a sound: the answer of the operation of the same name. */
export function workedOutOf(method: AnalysisMethod, samples: Samples, { key, firstMidi, lastMidi, a4Hz }: AnalysisInput, onProgress: (part: number) => void): SoundingNote | NothingHeard | SoundingTake {
  const keyboard = { compass: { firstMidi, lastMidi }, a4Hz };
  if (method === 'tone-run') return toneRunOf(samples, { ...keyboard, onProgress });
  return toneNoteOf(samples, key !== null && key <= keyCountOf(keyboard.compass) ? { ...keyboard, key } : keyboard);
}

/** The notes in what was worked out of a recording; nothing for what another version of the method worked out, whose figures may mean something else. */
export function heardIn(recording: Pick<Recording, 'id' | 'state' | 'key' | 'contents'>, { answer, method, version }: Pick<Analysis, 'answer' | 'method' | 'version'>): Heard | undefined {
  if (version !== analysisVersions[method]) return undefined;
  const told = recording.contents === 'walk' ? null : recording.key;
  const placed = (note: SoundingNote | NothingHeard): HeardNote => {
    const heard = note.heard ? note : undefined;
    return { recordingId: recording.id, state: recording.state, heardKey: heard?.key, key: told ?? heard?.key, note: heard, nothing: note.heard ? undefined : note };
  };
  if (method === 'tone-note') return { notes: [placed(answer as SoundingNote | NothingHeard)], missingKeys: [], duplicateKeys: [], doubtful: [] };
  const { notes, missingKeys, duplicateKeys, doubtful } = answer as SoundingTake;
  return { notes: notes.map(placed), missingKeys, duplicateKeys, doubtful };
}
