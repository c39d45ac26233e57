import { useQuery } from '@tanstack/react-query';
import { Link, Outlet, useParams, useSearch } from '@tanstack/react-router';
import { PianoProvider } from '../api/piano.tsx';
import { pianoQuery } from '../api/queries.ts';
import { useSay } from '../language/use-say.ts';
import { Note } from '../ui/note.tsx';
import { PianoCommands } from './piano-commands.tsx';
import { pianoPages } from './piano-pages.ts';
import { ProblemNote } from './problem-note.tsx';
import { StaySelect } from './stay-select.tsx';

/** The frame of a piano's pages: which piano, which stay, and its pages by name. */
export function PianoShell() {
  const say = useSay();
  const { pianoId } = useParams({ from: '/pianos/$pianoId' });
  const { cycle: wanted } = useSearch({ from: '/pianos/$pianoId' });
  const { data: file, error, refetch } = useQuery(pianoQuery(pianoId));
  if (file === undefined) {
    return <section className="page">{error === null ? <p className="soft">{say('shell.loading')}</p> : <Gone problem={error} onRetry={() => void refetch()} />}</section>;
  }
  const { instrument } = file;
  const cycle = Math.min(wanted ?? instrument.cycle, instrument.cycle);
  return (
    <PianoProvider file={file} cycle={cycle}>
      <header className="piano-head no-print">
        <div className="row">
          <h1>{instrument.name}</h1>
          {instrument.demo && <span className="demo-tag">{say('shell.demo')}</span>}
          {instrument.cycle > 1 && <StaySelect cycles={instrument.cycle} cycle={cycle} />}
        </div>
        {cycle < instrument.cycle && (
          <Note tone="warn">
            <p>{say('shell.stay.note')}</p>
          </Note>
        )}
        <nav className="nav" aria-label={say('shell.nav.piano')}>
          {pianoPages.map((page) => (
            <Link key={page} to={`/pianos/$pianoId/${page}`} params={{ pianoId }} search={(search) => search}>
              {say(`shell.nav.${page}`)}
            </Link>
          ))}
        </nav>
      </header>
      <PianoCommands file={file} />
      <Outlet />
    </PianoProvider>
  );
}

/** A piano that cannot be shown: why, and the way back. */
function Gone({ problem, onRetry }: { readonly problem: unknown; readonly onRetry: () => void }) {
  const say = useSay();
  return (
    <>
      <h1>{say('shell.gone')}</h1>
      <ProblemNote problem={problem} onRetry={onRetry} />
      <p>
        <Link to="/pianos">{say('shell.notFound.back')}</Link>
      </p>
    </>
  );
}
