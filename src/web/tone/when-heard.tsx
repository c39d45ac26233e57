import { type StateTone, stateTonesOf } from '#workshop';
import { type ReactNode, useMemo } from 'react';
import { useSay } from '../language/use-say.ts';
import { useRecordings } from './use-recordings.ts';

/** What follows from the notes heard in each state; while nothing was recorded, or no note heard, it says so, and what is still being worked out. */
export function WhenHeard({ children }: { readonly children: (tones: readonly StateTone[]) => ReactNode }) {
  const say = useSay();
  const recordings = useRecordings();
  const tones = useMemo(() => (recordings === undefined ? undefined : stateTonesOf(recordings)), [recordings]);
  if (tones === undefined || recordings === undefined) return <p role="status">{say('shell.loading')}</p>;
  const working = recordings.filter(({ job }) => job?.status === 'waiting' || job?.status === 'running').length;
  return (
    <>
      {working > 0 && <p role="status">{say('tone.working', { count: working })}</p>}
      {tones.length === 0 ? <p>{say(recordings.length === 0 ? 'tone.none' : 'tone.nothingHeard')}</p> : children(tones)}
    </>
  );
}
