import { useQuery } from '@tanstack/react-query';
import { Link, Outlet, useParams, useSearch } from '@tanstack/react-router';
import { PianoProvider } from '../api/piano.tsx';
import { pianoQuery } from '../api/queries.ts';
import { useSay } from '../language/use-say.ts';
import { ProblemNote } from './problem-note.tsx';

const pages = ['story', 'readings', 'action', 'work', 'proof'] as const;

/** The frame of a piano's pages: which piano, and its pages by name. */
export function PianoShell() {
  const say = useSay();
  const { pianoId } = useParams({ from: '/pianos/$pianoId' });
  const { cycle } = useSearch({ from: '/pianos/$pianoId' });
  const { data: file, error, refetch } = useQuery(pianoQuery(pianoId));
  if (file === undefined) {
    return <section className="page">{error === null ? <p className="soft">{say('shell.loading')}</p> : <ProblemNote problem={error} onRetry={() => void refetch()} />}</section>;
  }
  const { instrument } = file;
  return (
    <PianoProvider file={file} cycle={cycle}>
      <header className="piano-head no-print">
        <div className="row">
          <h1>{instrument.name}</h1>
          {instrument.demo && <span className="demo-tag">{say('shell.demo')}</span>}
        </div>
        <nav className="nav" aria-label={say('shell.nav.piano')}>
          {pages.map((page) => (
            <Link key={page} to={`/pianos/$pianoId/${page}`} params={{ pianoId }} search={(search) => search}>
              {say(`shell.nav.${page}`)}
            </Link>
          ))}
        </nav>
      </header>
      <Outlet />
    </PianoProvider>
  );
}
