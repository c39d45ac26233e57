import type { WeighingSession } from '#instrument';
import { memo, useState } from 'react';
import { useMoments, useSay } from '../../language/use-say.ts';
import { AppDialog } from '../../ui/app-dialog.tsx';
import { useDesk } from '../desk.tsx';
import { SessionForm } from './session-form.tsx';
import { SessionLine, SessionSummary } from './session-summary.tsx';

/** The session new figures belong to: how it is weighed, and the ways to change it or open another. */
export const SessionBar = memo(function SessionBar() {
  const say = useSay();
  const moment = useMoments();
  const { session: { sessions, current, decided, choose }, canWrite, held } = useDesk();
  const [editing, setEditing] = useState<WeighingSession | 'new'>();
  const close = (): void => { setEditing(undefined); };
  const asks = held.length > 0 && !decided;
  const nameOf = ({ startedAt }: WeighingSession): string => say('readings.session.of', { when: moment(startedAt) });
  return (
    <section className="session-bar" aria-label={say('readings.session')}>
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
            {current !== null && <button type="button" className="button" onClick={() => { setEditing(current); }}>{say('readings.session.change')}</button>}
            <button type="button" className="button" onClick={() => { setEditing('new'); }}>{say('readings.session.new')}</button>
          </div>
        )}
      </details>
      {editing !== undefined && (
        <AppDialog title={say(editing === 'new' ? 'readings.session.new' : 'readings.session.change')} isOpen form="wide" onClose={close}>
          <SessionForm session={editing === 'new' ? null : editing} cancelLabel={say('readings.session.cancel')} onCancel={close} onDone={(sessionId) => { choose(sessionId); close(); }} />
        </AppDialog>
      )}
      {asks && editing === undefined && (
        <AppDialog title={say('readings.session.prompt.title')} isOpen form="wide" onClose={() => { choose(null); }}>
          <p>{say('readings.session.prompt.text')}</p>
          <p role="status">{say('readings.session.prompt.held', { count: held.length })}</p>
          <SessionForm session={null} cancelLabel={say('readings.session.prompt.skip')} onCancel={() => { choose(null); }} onDone={choose} />
        </AppDialog>
      )}
    </section>
  );
});
