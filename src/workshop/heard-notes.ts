import type { KeyNumber, Recording, State } from '#instrument';
import type { DoubtfulPlace, NothingHeard, ToneNote } from '#tone';
import { type Analysis, analysisVersions } from './analysis.ts';
import type { NoteFigures, RunFigures } from './note-figures.ts';

/** A note heard in a recording. `key` is the one told of it, or else the one heard; `heardKey` the one heard alone. */
export interface HeardNote extends Omit<NoteFigures, 'note'> {
  readonly recordingId: string;
  readonly state: State;
  readonly key: KeyNumber | undefined;
  readonly heardKey: KeyNumber | undefined;
  /** Nothing where no note was recognised; then `nothing` says why. */
  readonly note: ToneNote | undefined;
  readonly nothing: NothingHeard | undefined;
}

/** What was heard in a recording; of a long take also which keys are missing or came too often, and where to listen again. */
export interface Heard {
  readonly notes: readonly HeardNote[];
  readonly missingKeys: readonly KeyNumber[];
  readonly duplicateKeys: readonly KeyNumber[];
  readonly doubtful: readonly DoubtfulPlace[];
}

/** The notes in what was worked out of a recording; nothing for what another version of the method worked out, whose figures may mean something else. */
export function heardIn(recording: Pick<Recording, 'id' | 'state' | 'key' | 'contents'>, { answer, method, version }: Pick<Analysis, 'answer' | 'method' | 'version'>): Heard | undefined {
  if (version !== analysisVersions[method]) return undefined;
  const told = recording.contents === 'walk' ? null : recording.key;
  const placed = ({ note, ...figures }: NoteFigures): HeardNote => {
    const heard = note.heard ? note : undefined;
    return { ...figures, recordingId: recording.id, state: recording.state, heardKey: heard?.key, key: told ?? heard?.key, note: heard, nothing: note.heard ? undefined : note };
  };
  if (method === 'tone-note') return { notes: [placed(answer as NoteFigures)], missingKeys: [], duplicateKeys: [], doubtful: [] };
  const { notes, missingKeys, duplicateKeys, doubtful } = answer as RunFigures;
  return { notes: notes.map(placed), missingKeys, duplicateKeys, doubtful };
}
