import { Link } from '@tanstack/react-router';
import { usePiano } from '../api/piano.tsx';
import { useSay } from '../language/use-say.ts';

/** Says what to measure first, and why. */
export function NothingMeasured() {
  const say = useSay();
  const { id } = usePiano();
  return (
    <section className="panel">
      <h2>{say('action.empty.title')}</h2>
      <p>{say('action.empty.text')}</p>
      <p>
        <Link className="button button-main" to="/pianos/$pianoId/readings" params={{ pianoId: id }} search={(search) => search}>{say('action.empty.go')}</Link>
      </p>
    </section>
  );
}
