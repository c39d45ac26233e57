import { useState } from 'react';
import { usePiano } from '../api/piano.tsx';
import { useSay } from '../language/use-say.ts';
import { AuditCheck } from './audit-check.tsx';
import { EventLog } from './event-log.tsx';
import { HistoryLookup } from './history-lookup.tsx';
import { PianoActions } from './piano-actions.tsx';
import { PianoFacts } from './piano-facts.tsx';
import { SessionList } from './session-list.tsx';
import { StatesTable } from './states-table.tsx';
import './story.css';

type Part = 'log' | 'history';

/** What happened to a piano: its card, its states side by side, its weighings, every event. */
export function StoryPage() {
  const say = useSay();
  const { instrument } = usePiano();
  const [part, setPart] = useState<Part>('log');
  return (
    <div className="page story">
      <section className="panel" aria-labelledby="story-card">
        <div className="row row-between">
          <h2 id="story-card">{say('story.card')}</h2>
          <PianoActions />
        </div>
        <PianoFacts instrument={instrument} />
      </section>
      <section className="panel" aria-labelledby="story-states">
        <h2 id="story-states">{say('story.states')}</h2>
        <StatesTable />
      </section>
      <section className="panel" aria-labelledby="story-sessions">
        <h2 id="story-sessions">{say('story.sessions')}</h2>
        <SessionList />
      </section>
      <section className="panel" aria-labelledby="story-events">
        <div className="row row-between">
          <h2 id="story-events">{say(part === 'log' ? 'story.events' : 'story.history')}</h2>
          <div className="row">
            <button type="button" className="button" aria-pressed={part === 'history'} onClick={() => { setPart(part === 'log' ? 'history' : 'log'); }}>
              {say(part === 'log' ? 'story.history.open' : 'story.events.open')}
            </button>
            <AuditCheck />
          </div>
        </div>
        {part === 'log' ? <EventLog /> : <HistoryLookup />}
      </section>
    </div>
  );
}
