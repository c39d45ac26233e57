import { type Compass, type KeyNumber, type State, keyCountOf } from '#instrument';
import { heardIn } from '#workshop';
import type { WorkedRecording } from '../use-recordings.ts';

/** Keys a state has a recording of, by what was told or else by what was heard. */
export function recordedKeys(recordings: readonly WorkedRecording[], state: State): ReadonlySet<KeyNumber> {
  const own = recordings.filter(({ recording }) => recording.state === state);
  return new Set(own.flatMap(({ recording, analysis }) => {
    if (recording.contents === 'note' && recording.key !== null) return [recording.key];
    return analysis === undefined ? [] : (heardIn(recording, analysis)?.notes ?? []).flatMap(({ key }) => key ?? []);
  }));
}

/** The next key without a recording, upward from a key and round to the beginning; nothing when every key has one. */
export function nextMissing(compass: Compass, recorded: ReadonlySet<KeyNumber>, after: KeyNumber): KeyNumber | undefined {
  const count = keyCountOf(compass);
  return Array.from({ length: count }, (_, step) => ((after + step) % count) + 1).find((key) => !recorded.has(key));
}
