import type { WeighingSession } from '#instrument';
import { memo, useState } from 'react';
import { useMoments, useSay } from '../../language/use-say.ts';
import { AppDialog } from '../../ui/app-dialog.tsx';
import { useDesk } from '../desk.tsx';
import { AssignStanding } from './assign-standing.tsx';
import { SessionAsk } from './session-ask.tsx';
import { SessionForm } from './session-form.tsx';
import { SessionLine, SessionSummary } from './session-summary.tsx';
import { useHeld } from './use-held.ts';

/** The session new figures belong to: asked for while it is open, then how it is weighed, and the ways to change it or open another. */
export const SessionBar = memo(function SessionBar() {
  const say = useSay();
  const moment = useMoments();
  const { session: { sessions, current, decided, choose }, canWrite } = useDesk();
  const held = useHeld();
  const [editing, setEditing] = useState<WeighingSession | 'new'>();
  const close = (): void => { setEditing(undefined); };
  const nameOf = ({ startedAt }: WeighingSession): string => say('readings.session.of', { when: moment(startedAt) });
  const answer = (sessionId: string | null): void => {
    choose(sessionId);
    requestAnimationFrame(focusFigures);
  };
  return (
    <section className="session-bar" aria-label={say('readings.session')}>
      {canWrite && (!decided || held > 0)
        ? <SessionAsk sessions={sessions} nameOf={nameOf} held={held} onAnswer={answer} onNew={() => { setEditing('new'); }} />
        : <CurrentSession nameOf={nameOf} onEdit={setEditing} />}
      {canWrite && current !== null && <AssignStanding session={current} />}
      {editing !== undefined && (
        <AppDialog title={say(editing === 'new' ? 'readings.session.new' : 'readings.session.change')} isOpen form="wide" onClose={close}>
          <SessionForm session={editing === 'new' ? null : editing} cancelLabel={say('readings.session.cancel')} onCancel={close} onDone={(sessionId) => { close(); answer(sessionId); }} />
        </AppDialog>
      )}
    </section>
  );
});

interface CurrentSessionProps {
  readonly nameOf: (session: WeighingSession) => string;
  readonly onEdit: (session: WeighingSession | 'new') => void;
}

function CurrentSession({ nameOf, onEdit }: CurrentSessionProps) {
  const say = useSay();
  const { session: { sessions, current, choose }, canWrite } = useDesk();
  return (
    <details>
      <summary>
        <strong>{current === null ? say('readings.session') : nameOf(current)}</strong>{' '}
        <span className="soft">{current === null ? say('readings.session.none') : <SessionLine session={current} />}</span>
      </summary>
      {current !== null && <SessionSummary session={current} />}
      {canWrite && (
        <div className="row">
          {sessions.length > 0 && (
            <select className="select session-select" aria-label={say('readings.session.choose')} value={current?.id ?? ''} onChange={(event) => { choose(event.target.value || null); }}>
              {sessions.map((session) => <option key={session.id} value={session.id}>{nameOf(session)}</option>)}
              <option value="">{say('readings.session.none')}</option>
            </select>
          )}
          {current !== null && <button type="button" className="button" onClick={() => { onEdit(current); }}>{say('readings.session.change')}</button>}
          <button type="button" className="button" onClick={() => { onEdit('new'); }}>{say('readings.session.new')}</button>
        </div>
      )}
    </details>
  );
}

/** The answer given, the hand goes back to where figures are typed. */
function focusFigures(): void {
  document.querySelector<HTMLElement>('.walk-input, .grid td[tabindex="0"]')?.focus({ preventScroll: true });
}
