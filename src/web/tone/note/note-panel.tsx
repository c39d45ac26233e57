import { type KeyNumber, noteNameOf } from '#instrument';
import { type SoundSeries, soundCurve } from '#plot';
import type { StateTone } from '#workshop';
import { useMemo } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { KeyPanelFrame } from '../../keys/key-panel-frame.tsx';
import { useLocale, useSay } from '../../language/use-say.ts';
import { SceneView } from '../../leaves/scene-view.tsx';
import { StateMark } from '../../leaves/state-mark.tsx';
import { useWidth } from '../../leaves/use-width.ts';
import { ListenBoth } from './listen-both.tsx';
import { NoteTable } from './note-table.tsx';
import type { PicturedNote } from './pictured-note.ts';
import { SpectrogramView } from './spectrogram-view.tsx';
import { type WorkedPicture, usePicture } from './use-picture.ts';

interface NotePanelProps {
  readonly keyNumber: KeyNumber;
  readonly tones: readonly StateTone[];
  /** Inharmonicity of this note worked out from its string. */
  readonly computedB: number | undefined;
  readonly onKey: (key: KeyNumber) => void;
}

/** One note: its figures in every state, spectrum with partials marked, decay, both at once, and what it sounds like. */
export function NotePanel({ keyNumber, tones, computedB, onKey }: NotePanelProps) {
  const say = useSay();
  const { compass } = usePiano();
  const heard = tones.filter(({ byKey }) => byKey.has(keyNumber));
  const [first, second] = [heard[0], heard[1]];
  const pictures = [usePicture(first?.byKey.get(keyNumber)), usePicture(second?.byKey.get(keyNumber))];
  const pictured = heard.flatMap((tone, index): readonly PicturedNote[] => {
    const picture = pictures[index]?.picture;
    return picture === undefined ? [] : [{ tone, picture }];
  });
  const isWorking = pictured.length < heard.length && !pictures.some(({ hasFailed }) => hasFailed);
  return (
    <KeyPanelFrame keyNumber={keyNumber} onKey={onKey} className="key-panel">
      {heard.length === 0 && <p>{say('tone.note.none', { note: noteNameOf(compass, keyNumber) })}</p>}
      {heard.length > 0 && <NoteTable keyNumber={keyNumber} tones={heard} computedB={computedB} />}
      {isWorking && <progress value={pictures[pictured.length]?.part ?? 0} max={1} aria-label={say('tone.note.working')} />}
      {pictures.some(({ hasFailed }) => hasFailed) && <p role="alert">{say('tone.job.failed.unreadable')}</p>}
      {pictured.length > 0 && (
        <>
          <ListenBoth notes={pictured} />
          <NoteCurves keyNumber={keyNumber} notes={pictured} />
          {pictured.map(({ tone, picture }) => (
            <figure key={tone.state} className="tone-figure">
              <SpectrogramView spectrogram={picture.picture.spectrogram} label={say('tone.note.spectrogram', { note: noteNameOf(compass, keyNumber), state: say(`state.${tone.state}`) })} />
              <figcaption className="soft small"><StateMark state={tone.state} /> {say('tone.note.spectrogram.about')}</figcaption>
            </figure>
          ))}
        </>
      )}
    </KeyPanelFrame>
  );
}

/** Spectrum and decay, states overlaid. */
function NoteCurves({ keyNumber, notes }: { readonly keyNumber: KeyNumber; readonly notes: readonly PicturedNote[] }) {
  const say = useSay();
  const locale = useLocale();
  const { compass } = usePiano();
  const [width, ref] = useWidth(420);
  const scenes = useMemo(() => {
    const name = noteNameOf(compass, keyNumber);
    const common = { locale, widthPx: Math.max(280, width), heightPx: 190 };
    const spectra = notes.map(({ tone, picture }): SoundSeries => ({ state: tone.state, label: say(`state.${tone.state}`), points: picture.picture.spectrum, marked: markedOf(tone, keyNumber, picture) }));
    const decays = notes.map(({ tone, picture }): SoundSeries => ({ state: tone.state, label: say(`state.${tone.state}`), points: picture.picture.decay }));
    const partials = notes[0]?.tone.byKey.get(keyNumber)?.heard.note.partials ?? [];
    const top = notes[0]?.picture.picture.spectrum.at(-1)?.x ?? 0;
    const places = partials.filter(({ n, frequencyHz }) => frequencyHz < top && (n <= 8 || n % 4 === 0)).map(({ n, frequencyHz }) => ({ x: frequencyHz, label: String(n) }));
    return [
      soundCurve({ ...common, series: spectra, places, xLabel: 'Hz', yLabel: `${say('tone.note.spectrum')} (dB)`, title: say('tone.note.spectrum'), description: say('tone.note.spectrum.described', { note: name, count: partials.length }) }),
      soundCurve({ ...common, series: decays, places: [], xLabel: 's', yLabel: `${say('tone.note.decay')} (dB)`, title: say('tone.note.decay'), description: say('tone.note.decay.described', { note: name }) }),
    ];
  }, [compass, keyNumber, locale, notes, say, width]);
  return <div ref={ref} className="note-curves">{scenes.map((scene) => <SceneView key={scene.title} scene={scene} />)}</div>;
}

/** The partials as marks on the curve: each at the highest point of the curve near it. */
function markedOf({ byKey }: StateTone, key: KeyNumber, { picture: { spectrum } }: WorkedPicture): readonly { readonly x: number; readonly y: number }[] {
  const step = (spectrum[1]?.x ?? 1) - (spectrum[0]?.x ?? 0);
  return (byKey.get(key)?.heard.note.partials ?? []).flatMap(({ frequencyHz }) => {
    const near = spectrum.filter(({ x }) => Math.abs(x - frequencyHz) <= 2 * step);
    return near.length === 0 ? [] : [{ x: frequencyHz, y: Math.max(...near.map(({ y }) => y)) }];
  });
}
