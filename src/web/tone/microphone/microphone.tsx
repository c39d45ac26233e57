import { keyCountOf, noteNameOf } from '#instrument';
import { writeWav } from '#recording';
import { useId, useState } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { sayProblem } from '../../api/say-problem.ts';
import { sayMaybe, useFigures, useSay } from '../../language/use-say.ts';
import { Note } from '../../ui/note.tsx';
import type { Take } from '../recordings/take.ts';
import { useKeeping } from '../recordings/use-keeping.ts';
import type { WorkedRecording } from '../use-recordings.ts';
import { LevelMeter } from './level-meter.tsx';
import { nextMissing, recordedKeys } from './next-key.ts';
import { type TakenSound, useMicrophone } from './use-microphone.ts';

interface MicrophoneProps {
  readonly take: Take;
  readonly recordings: readonly WorkedRecording[];
  readonly onClose: () => void;
}

/** Records live, key after key: each note is kept as soon as it has ended, and the next key without a recording proposed. */
export function Microphone({ take, recordings, onClose }: MicrophoneProps) {
  const say = useSay();
  const figure = useFigures();
  const { compass } = usePiano();
  const endsId = useId();
  const [endsItself, setEndsItself] = useState(true);
  const [chosen, choose] = useState<number>();
  const [said, setSaid] = useState('');
  const { keeping, keep } = useKeeping();
  const isOfKey = take.contents === 'note' || take.contents === 'ladder';
  const key = chosen ?? nextMissing(compass, recordedKeys(recordings, take.state), 0) ?? 1;
  const onTaken = (sound: TakenSound): void => {
    const name = `${isOfKey ? noteNameOf(compass, key) : take.contents}.wav`;
    const bytes = new Blob([writeWav(sound)], { type: 'audio/wav' });
    const device = take.device === '' ? (listening.microphone?.name ?? '').slice(0, 200) : take.device;
    void keep([{ id: sound.takenAt, name, bytes, key: isOfKey ? key : null, takenAt: sound.takenAt }], { ...take, device }, new AbortController().signal).then((kept) => {
      if (kept.length === 0) return;
      setSaid(say('tone.live.kept', { name, clipped: sound.isClipped ? 'yes' : 'no' }));
      if (isOfKey && !sound.isClipped) choose(nextMissing(compass, new Set([...recordedKeys(recordings, take.state), key]), key));
    });
  };
  const listening = useMicrophone({ endsItself: endsItself && take.contents === 'note', onTaken });
  const { microphone, failure, level, isTaking, isClipped, seconds, start, stop } = listening;
  const last = [...keeping.values()].at(-1);
  return (
    <section className="panel microphone" aria-label={say('tone.live')}>
      {failure !== undefined && <Note tone="bad" role="alert"><p>{sayMaybe(say, `tone.live.failed.${failure}`)}</p></Note>}
      {microphone === undefined && failure === undefined && <p role="status">{say('tone.live.asking')}</p>}
      {microphone !== undefined && (
        <>
          <p className="soft small">{microphone.name} · {figure(microphone.sampleRateHz, 0, 'Hz')}</p>
          {microphone.treatments.length > 0 && <Note tone="warn"><p><span aria-hidden="true">▲ </span>{say('tone.live.treated', { what: microphone.treatments.map((treatment) => say(`tone.live.treatment.${treatment}`)).join(', ') })}</p></Note>}
          <LevelMeter level={level} wasClipped={isTaking && isClipped} />
          {isOfKey && <KeyStepper keyNumber={key} onKey={choose} disabled={isTaking} />}
          {take.contents === 'note' && (
            <label className="row" htmlFor={endsId}><input id={endsId} type="checkbox" checked={endsItself} onChange={(event) => { setEndsItself(event.target.checked); }} />{say('tone.live.endsItself')}</label>
          )}
        </>
      )}
      <div className="row">
        {microphone !== undefined && (isTaking
          ? <button type="button" className="button button-main" onClick={stop}>{say('tone.live.stop', { seconds: figure(seconds, 0) })}</button>
          : <button type="button" className="button button-main" disabled={last?.kind === 'sending'} onClick={start}>{isOfKey ? say('tone.live.start', { key: noteNameOf(compass, key) }) : say('tone.live.startTake')}</button>)}
        <button type="button" className="button" onClick={onClose}>{say('tone.live.close')}</button>
      </div>
      <p role="status">{last?.kind === 'failed' ? sayProblem(last.failure, say) : said}</p>
    </section>
  );
}

function KeyStepper({ keyNumber, onKey, disabled }: { readonly keyNumber: number; readonly onKey: (key: number) => void; readonly disabled: boolean }) {
  const say = useSay();
  const { compass } = usePiano();
  return (
    <div className="row">
      <button type="button" className="button" disabled={disabled || keyNumber <= 1} onClick={() => { onKey(keyNumber - 1); }}>{say('action.key.below')}</button>
      <strong className="live-key" aria-live="polite">{say('action.key', { note: noteNameOf(compass, keyNumber), key: keyNumber })}</strong>
      <button type="button" className="button" disabled={disabled || keyNumber >= keyCountOf(compass)} onClick={() => { onKey(keyNumber + 1); }}>{say('action.key.above')}</button>
    </div>
  );
}
