import type { KeyNumber } from '#instrument';
import type { GatheredWork } from '#workshop';
import { usePiano } from '../../api/piano.tsx';
import { sayRuns } from '../../keys/key-runs.ts';
import { useFigures, useSay } from '../../language/use-say.ts';
import { Note } from '../../ui/note.tsx';

/** What was taken for granted, what is not offered, and which keys do not enter. */
export function WorkNotes({ gathered: { assumed, left, untimed, unpriced, problem } }: { readonly gathered: GatheredWork }) {
  const say = useSay();
  const { compass, action } = usePiano();
  const runsOf = (keys: readonly KeyNumber[]): string => (keys.length === problem?.keys.length ? say('leastWork.assumed.all') : sayRuns(keys, compass));
  return (
    <section className="panel" aria-labelledby="work-assumed">
      <h2 id="work-assumed">{say('leastWork.assumed')}</h2>
      <ul className="assumed">
        {assumed.map(({ what, keys }) => <li key={what}>{say(`leastWork.assumed.${what}`)} <span className="soft small">{runsOf(keys)}</span></li>)}
        <li>{say('leastWork.assumed.model')}</li>
        {untimed.operations.length > 0 && <li>{say('leastWork.untimed', { jobs: untimed.operations.map((name) => say(`actionTerms.operation.${name}`)).join(', ') })}</li>}
        {action?.currency != null && unpriced.length > 0 && <li>{say('leastWork.unpriced', { parts: unpriced.map((part) => say(`benchPart.${part}.one`)).join(', ') })}</li>}
        {untimed.setUps.length > 0 && <li>{say('leastWork.untimedSetUps', { setUps: untimed.setUps.map((name) => say(`actionTerms.setUp.${name}`)).join(', ') })}</li>}
      </ul>
      {left.length > 0 && (
        <>
          <h3>{say('leastWork.left')}</h3>
          <ul className="assumed">{left.map(({ why, keys }) => <li key={why}>{sayRuns(keys, compass)}: {say(`leastWork.left.${why}`)}</li>)}</ul>
        </>
      )}
    </section>
  );
}

/** What becomes of the room for the doubt of the weighings, where it was asked for: register by register, in one where they are alike. */
export function RoomNote({ gathered: { rooms } }: { readonly gathered: GatheredWork }) {
  const say = useSay();
  const figure = useFigures();
  const said = rooms.map(({ register, doubtG, guardG }) => ({
    register, isKept: guardG !== undefined,
    text: doubtG === undefined ? say('leastWork.room.unknown') : say(guardG === undefined ? 'leastWork.room.wide' : 'leastWork.room.kept', { room: figure(doubtG, 1, 'g') }),
  }));
  const [first] = said;
  if (first === undefined) return null;
  const isAlike = said.every(({ text }) => text === first.text);
  return (
    <Note {...(said.every(({ isKept }) => isKept) ? {} : { tone: 'warn' })}>
      {isAlike ? first.text : <ul className="assumed">{said.map(({ register, text }) => <li key={register}><strong>{say(`register.${register}`)}</strong>: {text}</li>)}</ul>}
    </Note>
  );
}

/** Keys that no work offered brings inside, each a button to it. */
export function OutOfReach({ keys, onKey }: { readonly keys: readonly KeyNumber[]; readonly onKey: (key: KeyNumber) => void }) {
  const say = useSay();
  const { compass } = usePiano();
  if (keys.length === 0) return null;
  return (
    <section className="panel" aria-labelledby="work-out">
      <h2 id="work-out">{say('leastWork.out')}</h2>
      <p className="soft small">{say('leastWork.out.about')}</p>
      <div className="row">{keys.map((key) => <button key={key} type="button" className="button" onClick={() => { onKey(key); }}>{sayRuns([key], compass)}</button>)}</div>
    </section>
  );
}
