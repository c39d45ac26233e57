import { noteNameOf } from '#instrument';
import { type Heard, type HeardNote, heardIn } from '#workshop';
import { usePiano } from '../../api/piano.tsx';
import { useFigures, useSay } from '../../language/use-say.ts';
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
      {heard.doubtful.length > 0 && <DoubtfulPlaces places={heard.doubtful} />}
    </div>
  );
}

/** Where in a long take to listen again, by the second. */
function DoubtfulPlaces({ places }: { readonly places: Heard['doubtful'] }) {
  const say = useSay();
  const figure = useFigures();
  const { compass } = usePiano();
  return (
    <details>
      <summary>{say('tone.doubtful', { count: places.length })}</summary>
      <ul className="doubtful-list">
        {places.map(({ startS, doubt, key, reason }) => (
          <li key={`${String(startS)} ${doubt}`}>{figure(startS, 1, 's')}{key !== undefined && `, ${noteNameOf(compass, key)}`}: {say(`tone.doubt.${doubt}`)}{reason !== undefined && ` ${say(`tone.nothing.${reason}`)}`}</li>
        ))}
      </ul>
    </details>
  );
}

function OneNote({ note: heard }: { readonly note: HeardNote }) {
  const say = useSay();
  const figure = useFigures();
  const { compass } = usePiano();
  const { heardKey, note, nothing } = heard;
  return (
    <div className="heard">
      <p>
        {heardKey === undefined ? say('tone.heard.none') : say('tone.heard.key', { key: noteNameOf(compass, heardKey) })}
        {nothing !== undefined && <>: {say(`tone.nothing.${nothing.reason}`)}</>}
        {note !== undefined && <> · {figure(note.f0Hz, 2, 'Hz')} ({figure(note.offsetCents, 1, 'ct', true)})</>}
        {note?.inharmonicityB !== undefined && <> · B {note.inharmonicityB.toExponential(2)}</>}
      </p>
      <Doubts note={heard} />
    </div>
  );
}

/** What stands against a note: another key than told, overdriven, drowned. */
function Doubts({ note: { key, heardKey, note, nothing } }: { readonly note: HeardNote }) {
  const say = useSay();
  const { compass } = usePiano();
  const isOther = key !== undefined && heardKey !== undefined && key !== heardKey;
  const warnings = (note ?? nothing)?.quality.warnings.filter((warning) => warning !== 'wrong-key') ?? [];
  if (!isOther && warnings.length === 0) return null;
  return (
    <Note tone="warn">
      {isOther && <p><span aria-hidden="true">▲ </span>{say('tone.heard.other', { told: noteNameOf(compass, key), heard: noteNameOf(compass, heardKey) })}</p>}
      {warnings.map((warning) => <p key={warning}><span aria-hidden="true">▲ </span>{say(warning === 'clipped' ? 'tone.heard.clipped' : `tone.warning.${warning}`)}</p>)}
    </Note>
  );
}
