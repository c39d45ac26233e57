import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { pianosQuery } from '../api/queries.ts';
import { useSay } from '../language/use-say.ts';
import { ProblemNote } from '../shell/problem-note.tsx';

export function PianosPage() {
  const say = useSay();
  const { data, error, refetch } = useQuery(pianosQuery);
  return (
    <section className="page">
      <h1>{say('shell.nav.pianos')}</h1>
      {error !== null && <ProblemNote problem={error} onRetry={() => void refetch()} />}
      <ul>
        {data?.map(({ instrument }) => (
          <li key={instrument.id}>
            <Link to="/pianos/$pianoId/story" params={{ pianoId: instrument.id }}>
              {instrument.name}
            </Link>
          </li>
        ))}
      </ul>
    </section>
  );
}
