import type { KeyNumber, Recording, State } from '#instrument';
import type { NothingHeard, ToneNote } from '#tone';
import { type Analysis, analysisVersions } from './analysis.ts';
import type { NoteFigures } from './note-figures.ts';

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

/** What was heard in a recording, and which keys of a walk are missing or came twice. */
export interface Heard {
  readonly notes: readonly HeardNote[];
  readonly missingKeys: readonly KeyNumber[];
  readonly duplicateKeys: readonly KeyNumber[];
}

/** What `tone-run` answers: the figures of each note it found. */
export interface RunFigures {
  readonly notes: readonly NoteFigures[];
  readonly missingKeys: readonly KeyNumber[];
  readonly duplicateKeys: readonly KeyNumber[];
}

/** The notes in what was worked out of a recording; nothing for what another version of the method worked out, whose figures may mean something else. */
export function heardIn(recording: Pick<Recording, 'id' | 'state' | 'key' | 'contents'>, { answer, method, version }: Pick<Analysis, 'answer' | 'method' | 'version'>): Heard | undefined {
  if (version !== analysisVersions[method]) return undefined;
  const run = method === 'tone-run' ? (answer as RunFigures) : { notes: [answer as NoteFigures], missingKeys: [], duplicateKeys: [] };
  const told = recording.contents === 'walk' ? null : recording.key;
  return {
    notes: run.notes.map(({ note, ...figures }): HeardNote => {
      const heard = note.heard ? note : undefined;
      return { ...figures, recordingId: recording.id, state: recording.state, heardKey: heard?.key, key: told ?? heard?.key, note: heard, nothing: note.heard ? undefined : note };
    }),
    missingKeys: run.missingKeys,
    duplicateKeys: run.duplicateKeys,
  };
}
