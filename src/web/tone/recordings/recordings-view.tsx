import { lazy, Suspense, useState } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { useSay } from '../../language/use-say.ts';
import { useRecordings } from '../use-recordings.ts';
import { RecordingRow } from './recording-row.tsx';
import { TakeFields } from './take-fields.tsx';
import { TakeFiles } from './take-files.tsx';
import { useTake } from './take.ts';

/** The recordings of this stay: taken in, worked out, listened to. */
export function RecordingsView() {
  const say = useSay();
  const { isCurrent } = usePiano();
  const recordings = useRecordings();
  if (recordings === undefined) return <p role="status">{say('shell.loading')}</p>;
  return (
    <>
      {isCurrent && <TakeIn recordings={recordings} />}
      <section className="recordings" aria-labelledby="recordings-title">
        <h2 id="recordings-title">{say('tone.recordings', { count: recordings.length })}</h2>
        {recordings.length === 0 && <p>{say('tone.none')}</p>}
        <ul className="recording-list">{recordings.map((worked) => <RecordingRow key={worked.recording.id} worked={worked} />)}</ul>
      </section>
    </>
  );
}

const Microphone = lazy(async () => ({ default: (await import('../microphone/microphone.tsx')).Microphone }));

/** Where sound comes in: from files, or live. */
function TakeIn({ recordings }: { readonly recordings: NonNullable<ReturnType<typeof useRecordings>> }) {
  const say = useSay();
  const [take, change] = useTake();
  const [isLive, setLive] = useState(false);
  return (
    <section className="panel" aria-labelledby="take-title">
      <h2 id="take-title">{say('tone.take')}</h2>
      <TakeFields take={take} onChange={change} earlier={recordings} />
      <TakeFiles take={take} />
      {isLive
        ? <Suspense fallback={<p role="status">{say('shell.loading')}</p>}><Microphone take={take} recordings={recordings} onClose={() => { setLive(false); }} /></Suspense>
        : <div><button type="button" className="button" onClick={() => { setLive(true); }}>{say('tone.live')}</button></div>}
    </section>
  );
}
