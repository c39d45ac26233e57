import { noteNameOf } from '#instrument';
import { type HeardNote, heardIn } from '#workshop';
import { usePiano } from '../../api/piano.tsx';
import { sayMaybe, useFigures, useSay } from '../../language/use-say.ts';
import { Note } from '../../ui/note.tsx';
import type { WorkedRecording } from '../use-recordings.ts';

/** What was understood of a recording: the key heard against the key told, pitch and inharmonicity, and every doubt. */
export function HeardWords({ worked: { recording, analysis } }: { readonly worked: WorkedRecording }) {
  const say = useSay();
  const { compass } = usePiano();
  if (analysis === undefined) return null;
  const heard = heardIn(recording, analysis);
  if (heard === undefined) return null;
  const names = (keys: readonly number[]): string => keys.map((key) => noteNameOf(compass, key)).join(', ');
  if (recording.contents === 'note') return heard.notes.map((note) => <OneNote key={note.recordingId} note={note} />);
  return (
    <div className="heard">
      <p>{say('tone.heard.run', { count: heard.notes.length, keys: names(heard.notes.flatMap(({ key }) => key ?? [])) })}</p>
      {heard.missingKeys.length > 0 && <Note tone="warn"><p><span aria-hidden="true">▲ </span>{say('tone.heard.missing', { keys: names(heard.missingKeys) })}</p></Note>}
      {heard.duplicateKeys.length > 0 && <Note tone="warn"><p><span aria-hidden="true">▲ </span>{say('tone.heard.twice', { keys: names(heard.duplicateKeys) })}</p></Note>}
      {heard.notes.map((note) => <Doubts key={String(note.startS)} note={note} />)}
    </div>
  );
}

function OneNote({ note }: { readonly note: HeardNote }) {
  const say = useSay();
  const figure = useFigures();
  const { compass } = usePiano();
  const { heardKey, f0Hz, offsetCents, inharmonicityB } = note;
  return (
    <div className="heard">
      <p>
        {heardKey === undefined ? say('tone.heard.none') : say('tone.heard.key', { key: noteNameOf(compass, heardKey) })}
        {f0Hz !== undefined && <> · {figure(f0Hz, 2, 'Hz')}</>}
        {offsetCents !== undefined && <> ({figure(offsetCents, 1, 'ct', true)})</>}
        {inharmonicityB !== undefined && <> · B {inharmonicityB.toExponential(2)}</>}
      </p>
      <Doubts note={note} />
    </div>
  );
}

/** What stands against a note: another key than told, overdriven, drowned. */
function Doubts({ note: { key, heardKey, quality } }: { readonly note: HeardNote }) {
  const say = useSay();
  const { compass } = usePiano();
  const isOther = key !== undefined && heardKey !== undefined && key !== heardKey;
  const warnings = quality?.warnings ?? [];
  if (!isOther && warnings.length === 0 && quality?.clipped !== true) return null;
  return (
    <Note tone="warn">
      {isOther && <p><span aria-hidden="true">▲ </span>{say('tone.heard.other', { told: noteNameOf(compass, key), heard: noteNameOf(compass, heardKey) })}</p>}
      {quality?.clipped === true && <p><span aria-hidden="true">▲ </span>{say('tone.heard.clipped')}</p>}
      {warnings.map((warning) => <p key={warning}><span aria-hidden="true">▲ </span>{sayMaybe(say, `tone.warning.${warning}`)}</p>)}
    </Note>
  );
}
