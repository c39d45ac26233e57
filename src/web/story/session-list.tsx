import type { WeighingSession } from '#instrument';
import { usePiano } from '../api/piano.tsx';
import { useDays, useFigures, useMoments, useSay } from '../language/use-say.ts';
import { StateMark } from '../leaves/state-mark.tsx';
import { EventPages } from './event-pages.tsx';
import { Fold } from './fold.tsx';
import { decimalsFor } from './say-event.ts';

/** Every weighing of the stay: when, and how it was taken. */
export function SessionList() {
  const say = useSay();
  const { sessions, isCurrent } = usePiano();
  if (sessions.length === 0) return <p className="soft">{say(isCurrent ? 'story.sessions.none' : 'story.sessions.noneThen')}</p>;
  return (
    <ul className="session-list">
      {sessions.map((session) => (
        <SessionLine key={session.id} session={session} />
      ))}
    </ul>
  );
}

function SessionLine({ session }: { readonly session: WeighingSession }) {
  const say = useSay();
  const figure = useFigures();
  const moment = useMoments();
  const day = useDays();
  const measure = (value: number | null, unit: 'mm' | 'g' | 'degC' | 'pct'): string => (value === null ? say('story.notStated') : figure(value, decimalsFor(value, 2), unit));
  const choice = (area: string, value: string | boolean | null): string =>
    value === null ? say('story.notStated') : say('story.session.choice', { area, value: String(value) });
  const facts: readonly (readonly [string, string])[] = [
    [say('story.session.weighedOn'), session.weighedOn === null ? say('story.notStated') : day(session.weighedOn)],
    [say('story.session.place'), measure(session.placeOnKeyMm, 'mm')],
    [say('story.session.step'), measure(session.stepG, 'g')],
    [say('story.session.repeatability'), measure(session.repeatabilityG, 'g')],
    [say('story.session.rule'), choice('rule', session.rule)],
    [say('story.session.dampers'), choice('dampers', session.dampers)],
    [say('story.session.springs'), choice('springs', session.helperSprings)],
    [say('story.session.regulated'), choice('regulated', session.regulated)],
    [say('story.session.climate'), `${measure(session.temperatureC, 'degC')}, ${measure(session.humidityPct, 'pct')}`],
    [say('story.session.equipment'), session.equipment ?? say('story.notStated')],
  ];
  return (
    <li>
      <details>
        <summary>
          <StateMark state={session.state} /> <span>{moment(session.startedAt)}</span> <span className="soft">{measure(session.stepG, 'g')}</span>
        </summary>
        <dl className="facts">
          {facts.map(([name, value]) => (
            <div key={name}>
              <dt>{name}</dt>
              <dd>{value}</dd>
            </div>
          ))}
        </dl>
        {session.remark !== '' && <p className="remark">{session.remark}</p>}
        <Fold title={say('story.session.events')}><EventPages shown={{ about: `session/${session.id}` }} /></Fold>
      </details>
    </li>
  );
}
