import { compassOf, keyCountOf, states } from '#instrument';
import { Link } from '@tanstack/react-router';
import type { PianoSummary } from '../api/queries.ts';
import { useMoments, useSay } from '../language/use-say.ts';
import { StateMark } from '../leaves/state-mark.tsx';

/** One piano of the list: what it is, and how much of it is measured. */
export function PianoCard({ summary }: { readonly summary: PianoSummary }) {
  const say = useSay();
  const moment = useMoments();
  const { instrument, readingCounts, lastEventAt } = summary;
  const facts = [say(`pianos.kind.${instrument.kind}`), instrument.maker, instrument.year === null ? null : String(instrument.year), say('pianos.keys', { count: keyCountOf(compassOf(instrument)) })];
  return (
    <li className="piano-card">
      <div className="row row-between">
        <h2>
          <Link to="/pianos/$pianoId/story" params={{ pianoId: instrument.id }}>
            {instrument.name}
          </Link>
        </h2>
        {instrument.demo && <span className="demo-tag">{say('shell.demo')}</span>}
      </div>
      <p className="soft">{facts.filter((fact) => fact !== null).join(' · ')}</p>
      <dl className="piano-counts">
        {states.map((state) => (
          <div key={state}>
            <dt>
              <StateMark state={state} />
            </dt>
            <dd>{say('pianos.readings', { count: readingCounts[state] })}</dd>
          </div>
        ))}
      </dl>
      <p className="soft small">
        {instrument.cycle > 1 && `${say('pianos.stay', { cycle: instrument.cycle })} · `}
        {lastEventAt === null ? '' : say('pianos.last', { at: moment(lastEventAt) })}
      </p>
    </li>
  );
}
