import { useState } from 'react';
import { usePiano } from '../api/piano.tsx';
import { useSay } from '../language/use-say.ts';
import { AuditCheck } from './audit-check.tsx';
import { EventLog } from './event-log.tsx';
import { HistoryLookup } from './history-lookup.tsx';
import { Owners } from './owners.tsx';
import { PianoActions } from './piano-actions.tsx';
import { PianoFacts } from './piano-facts.tsx';
import { STAYS, StayFolds } from './stay-fold.tsx';
import { StayStory } from './stay-story.tsx';
import { staysOf, useEventDays } from './use-event-days.ts';
import './story.css';

type Part = 'log' | 'history';

/** What happened to a piano: its card, its owners and stays as a line of time, each stay with what came of it, every event. */
export function StoryPage() {
  const say = useSay();
  const { instrument } = usePiano();
  const [part, setPart] = useState<Part>('log');
  const { days } = useEventDays();
  const stays = staysOf(days ?? []);
  return (
    <div className="page story">
      <section className="panel" aria-labelledby="story-card">
        <div className="row row-between">
          <h2 id="story-card">{say('story.card')}</h2>
          <PianoActions />
        </div>
        <PianoFacts instrument={instrument} />
      </section>
      <section className="panel" aria-labelledby="story-owners">
        <h2 id="story-owners">{say('story.owners')}</h2>
        <Owners stays={stays} />
      </section>
      <section className="panel" aria-labelledby={STAYS}>
        <h2 id={STAYS} tabIndex={-1}>{say('story.stays')}</h2>
        {instrument.cycle === 1 ? <StayStory /> : <StayFolds stays={stays} />}
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
