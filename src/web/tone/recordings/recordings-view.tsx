import { useSay } from '../../language/use-say.ts';

/** The recordings of this stay: kept, listened to, and what was understood of each. */
export function RecordingsView() {
  const say = useSay();
  return <p className="soft">{say('tone.none')}</p>;
}
