import { useEffect, useRef, useState } from 'react';
import { useFigures, useSay } from '../../language/use-say.ts';
import { StateMark } from '../../leaves/state-mark.tsx';
import type { PicturedNote } from './pictured-note.ts';
import { type Playing, gainsFor, play } from './play.ts';

/** What a note sounds like in each state, alone or one after the other; set equally loud, and by how much is said. */
export function ListenBoth({ notes }: { readonly notes: readonly PicturedNote[] }) {
  const say = useSay();
  const figure = useFigures();
  const playing = useRef<Playing>(undefined);
  const [isPlaying, setPlaying] = useState(false);
  const stop = (): void => {
    playing.current?.stop();
    playing.current = undefined;
    setPlaying(false);
  };
  useEffect(() => () => { playing.current?.stop(); }, []);
  const gains = gainsFor(notes.map(({ picture }) => picture.picture.rms));
  const start = (which: readonly number[]): void => {
    stop();
    setPlaying(true);
    playing.current = play(which.flatMap((index) => {
      const picture = notes[index]?.picture;
      return picture === undefined ? [] : [{ channels: picture.channels, sampleRateHz: picture.sampleRateHz, gain: gains[index] ?? 1 }];
    }), () => { setPlaying(false); });
  };
  return (
    <div className="listen">
      <div className="row">
        {notes.map(({ tone: { state } }, index) => <button key={state} type="button" className="button" aria-label={say('tone.play.state', { state: say(`state.${state}`) })} onClick={() => { start([index]); }}><span aria-hidden="true">▶ </span><StateMark state={state} /></button>)}
        {notes.length > 1 && <button type="button" className="button button-main" onClick={() => { start(notes.map((_, index) => index)); }}>{say('tone.play.both')}</button>}
        <button type="button" className="button" disabled={!isPlaying} onClick={stop}>{say('tone.play.stop')}</button>
      </div>
      {notes.length > 1 && <p className="soft small">{notes.map(({ tone: { state } }, index) => say('tone.play.gain', { state: say(`state.${state}`), gain: figure(20 * Math.log10(gains[index] ?? 1), 1, undefined, true) })).join(', ')}. {say('tone.play.about')}</p>}
    </div>
  );
}
