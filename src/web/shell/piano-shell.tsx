import type { Instrument } from '#instrument';
import { useQuery } from '@tanstack/react-query';
import { Link, Outlet, useNavigate, useParams, useSearch } from '@tanstack/react-router';
import { useMemo } from 'react';
import { PianoProvider } from '../api/piano.tsx';
import { pianoQuery } from '../api/queries.ts';
import { type Command, useCommands } from '../commands/registry.ts';
import { useSay } from '../language/use-say.ts';
import { tellerOf } from '../undo/piano-undo.ts';
import { undoLast } from '../undo/undo.ts';
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
      <PianoCommands instrument={instrument} />
      <Outlet />
    </PianoProvider>
  );
}

const goKeys: Readonly<Record<(typeof pages)[number], string>> = { story: 'g s', readings: 'g r', action: 'g a', work: 'g w', proof: 'g p' };

/** The commands that hold on every page of a piano. */
function PianoCommands({ instrument }: { readonly instrument: Instrument }) {
  const navigate = useNavigate();
  const commands = useMemo((): readonly Command[] => {
    const params = { pianoId: instrument.id };
    const goes = pages.map((page): Command => ({
      id: `go.${page}`, label: `command.go.${page}`, group: 'command.group.piano', shortcut: goKeys[page],
      perform: () => void navigate({ to: `/pianos/$pianoId/${page}`, params }),
    }));
    return [...goes, { id: 'undo', label: 'command.undo', group: 'command.group.piano', shortcut: 'mod+z', perform: () => { undoLast(instrument.id, tellerOf(instrument)); } }];
  }, [instrument, navigate]);
  useCommands(commands);
  return null;
}
