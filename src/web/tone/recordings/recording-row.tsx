import { type Recording, noteNameOf } from '#instrument';
import { useState } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { useFigures, useSay } from '../../language/use-say.ts';
import { StateMark } from '../../leaves/state-mark.tsx';
import type { WorkedRecording } from '../use-recordings.ts';
import { HeardWords } from './heard-words.tsx';
import { JobWords } from './job-words.tsx';
import { RecordingForm } from './recording-form.tsx';
import { soundAddress } from './send-sound.ts';
import { useRecordingActs } from './use-recording-acts.ts';

const MEGABYTE = 1_000_000;

/** One recording: what is told of it, what was heard in it, and what can be done with it. */
export function RecordingRow({ worked }: { readonly worked: WorkedRecording }) {
  const say = useSay();
  const figure = useFigures();
  const { compass, isCurrent } = usePiano();
  const [isChanging, setChanging] = useState(false);
  const acts = useRecordingActs();
  const { recording, job } = worked;
  const name = nameOf(recording, say('tone.unnamed'));
  const told = recording.key === null ? say('tone.key.unknown') : noteNameOf(compass, recording.key);
  const isOpen = job?.status === 'waiting' || job?.status === 'running';
  return (
    <li className="panel recording-row">
      <div className="row row-between">
        <h3>{name}</h3>
        <StateMark state={recording.state} />
      </div>
      <p>
        {say(`recording.contents.${recording.contents}`)}{recording.contents !== 'walk' && <> · {say('tone.told', { key: told })}</>}
        {' '}<span className="soft small">{recording.file.format.toUpperCase()}{recording.copy !== null && ` + ${recording.copy.format.toUpperCase()}`}, {say('tone.megabytes', { value: figure(recording.file.byteCount / MEGABYTE, 2) })}</span>
      </p>
      <p className="soft small">{recording.place === '' ? say('tone.place.none') : say('tone.place.was', { place: recording.place })}{recording.device !== '' && ` · ${recording.device}`}{recording.remark !== '' && ` · ${recording.remark}`}</p>
      <JobWords job={job} onCancel={(id) => { acts.mutate({ kind: 'cancel', id }); }} />
      {!isOpen && <HeardWords worked={worked} />}
      {/* eslint-disable-next-line jsx-a11y/media-has-caption -- a struck string has no words to caption; what was heard stands above */}
      <audio className="recording-audio" controls preload="none" src={soundAddress((recording.copy ?? recording.file).hash)} aria-label={say('tone.listen.to', { name })} />
      {isChanging && <RecordingForm recording={recording} onClose={() => { setChanging(false); }} />}
      {isCurrent && !isChanging && (
        <div className="row no-print">
          <button type="button" className="button" aria-label={say('tone.change.of', { name })} onClick={() => { setChanging(true); }}>{say('tone.change')}</button>
          <button type="button" className="button" disabled={isOpen} aria-label={say('tone.again.of', { name })} onClick={() => { acts.mutate({ kind: 'again', ids: [recording.id] }); }}>{say('tone.again')}</button>
          <button type="button" className="button" aria-label={say('tone.withdraw.of', { name })} onClick={() => { acts.mutate({ kind: 'withdraw', id: recording.id }); }}>{say('tone.withdraw')}</button>
        </div>
      )}
    </li>
  );
}

/** The name of its file; what no file gave a name is called by when it was taken. */
function nameOf({ fileName, takenAt }: Recording, unnamed: string): string {
  return fileName !== '' ? fileName : (takenAt ?? unnamed);
}
