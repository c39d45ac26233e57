import type { LogEvent } from '#workshop';
import { useState } from 'react';
import { usePiano } from '../api/piano.tsx';
import { useLocale, useMoments, useSay } from '../language/use-say.ts';
import { useWriter } from '../people/use-writer.ts';
import { tellerOf } from '../undo/piano-undo.ts';
import { undoEvent } from '../undo/undo.ts';
import { type Telling, sayChange, sayEvent } from './say-event.ts';

/** Changes shown one by one when a row of many is opened; beyond that the figures are better looked at in the readings. */
const MOST_SHOWN = 100;

/** One event in words: when, who, what; its changes one by one on request; the way back, or why there is none. */
export function EventRow({ event }: { readonly event: LogEvent }) {
  const say = useSay();
  const locale = useLocale();
  const moment = useMoments();
  const writer = useWriter();
  const { id, compass, file } = usePiano();
  const [busy, setBusy] = useState(false);
  const telling: Telling = { say, locale, compass, work: file.work };
  const { seq, at, by, changes, undoneBy } = event;
  const undo = async (): Promise<void> => {
    setBusy(true);
    await undoEvent(id, seq, tellerOf(file));
    setBusy(false);
  };
  return (
    <li className={undoneBy === null ? 'event' : 'event event-undone'} value={seq}>
      <span className="event-seq soft">{seq}</span>
      <div className="event-what">
        {changes.length > 1 ? (
          <details>
            <summary>{sayEvent(event, telling)}</summary>
            <ul className="event-changes">
              {changes.slice(0, MOST_SHOWN).map((change) => (
                <li key={`${change.entity} ${change.place}`}>{sayChange(change, telling)}</li>
              ))}
              {changes.length > MOST_SHOWN && <li>{say('shell.outbox.more', { count: changes.length - MOST_SHOWN })}</li>}
            </ul>
          </details>
        ) : (
          <span>{sayEvent(event, telling)}</span>
        )}
        <span className="soft small">
          {moment(at)} · {writer(by)}
          {undoneBy !== null && ` · ${say('story.event.undoneBy', { seq: undoneBy })}`}
        </span>
      </div>
      {undoneBy === null && (
        <button type="button" className="button no-print" disabled={busy} aria-label={say('story.event.undoThis', { seq })} onClick={() => void undo()}>
          {say('story.event.undo')}
        </button>
      )}
    </li>
  );
}
