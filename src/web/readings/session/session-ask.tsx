import type { WeighingSession } from '#instrument';
import { useSay } from '../../language/use-say.ts';
import { Note } from '../../ui/note.tsx';

interface SessionAskProps {
  readonly sessions: readonly WeighingSession[];
  readonly nameOf: (session: WeighingSession) => string;
  /** Figures that wait for the answer. */
  readonly held: number;
  readonly onAnswer: (sessionId: string | null) => void;
  readonly onNew: () => void;
}

/** Sessions offered by a button each; older ones stand in the list. */
const OFFERED = 2;

/** Asks how the weights are taken, beside the work and never before it: figures can be typed meanwhile, and wait for the answer. */
export function SessionAsk({ sessions, nameOf, held, onAnswer, onNew }: SessionAskProps) {
  const say = useSay();
  const offered = sessions.slice(-OFFERED).reverse();
  const older = sessions.slice(0, -OFFERED).reverse();
  return (
    <Note tone="accent">
      <div className="session-ask">
        <div className="session-say">
          <strong>{say('readings.session.prompt.title')}</strong>
          <span role="status">{say('readings.session.prompt.held', { count: held })}</span>
        </div>
        <p className="soft session-why">{say('readings.session.prompt.text')}</p>
        <div className="row">
          {offered.map((session) => <button key={session.id} type="button" className="button" onClick={() => { onAnswer(session.id); }}>{nameOf(session)}</button>)}
          {older.length > 0 && (
            <select className="select session-select" aria-label={say('readings.session.prompt.older')} value="" onChange={(event) => { onAnswer(event.target.value); }}>
              <option value="" disabled>{say('readings.session.prompt.older')}</option>
              {older.map((session) => <option key={session.id} value={session.id}>{nameOf(session)}</option>)}
            </select>
          )}
          <button type="button" className={offered.length === 0 ? 'button button-main' : 'button'} onClick={onNew}>{say('readings.session.new')}</button>
          <button type="button" className="button" onClick={() => { onAnswer(null); }}>{say('readings.session.prompt.skip')}</button>
        </div>
      </div>
    </Note>
  );
}
