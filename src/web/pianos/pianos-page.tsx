import { useQuery } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { Suspense, lazy, useMemo, useState } from 'react';
import { addPiano } from '../api/mutations.ts';
import { PIANOS_SHOWN, pianosQuery } from '../api/queries.ts';
import { type Command, useCommands } from '../commands/registry.ts';
import { useSay } from '../language/use-say.ts';
import { ProblemNote } from '../shell/problem-note.tsx';
import { DemoBar } from './demo-bar.tsx';
import { PianoCard } from './piano-card.tsx';
import './pianos.css';

const PianoDialog = lazy(() => import('./piano-dialog.tsx'));

/** Every piano of the shop; the demo beside them, told apart. */
export function PianosPage() {
  const say = useSay();
  const navigate = useNavigate();
  const [limit, setLimit] = useState(PIANOS_SHOWN);
  const [words, setWords] = useState('');
  const { data: found, error, refetch } = useQuery(pianosQuery(limit, words));
  const data = found?.pianos;
  const total = found?.total ?? 0;
  const [adding, setAdding] = useState(false);
  const commands = useMemo((): readonly Command[] => [
    { id: 'pianos.add', label: 'pianos.add', group: 'command.group.everywhere', shortcut: 'n', perform: () => { setAdding(true); } },
  ], []);
  useCommands(commands);
  const isEmpty = words === '' && data?.every(({ instrument }) => instrument.demo) === true && total === data.length;
  return (
    <section className="page">
      <div className="row row-between">
        <h1>{say('shell.nav.pianos')}</h1>
        <button type="button" className="button button-main" onClick={() => { setAdding(true); }}>
          {say('pianos.add')}
        </button>
      </div>
      {error !== null && <ProblemNote problem={error} onRetry={() => void refetch()} />}
      {data === undefined && error === null && <p className="soft">{say('shell.loading')}</p>}
      {isEmpty && (
        <div className="panel pianos-empty">
          <h2>{say('pianos.empty.title')}</h2>
          <p>{say('pianos.empty.first')}</p>
          <p>{say('pianos.empty.why')}</p>
        </div>
      )}
      {(total > PIANOS_SHOWN || words !== '') && <input type="search" className="input pianos-find" aria-label={say('pianos.find')} placeholder={say('pianos.find')} value={words} onChange={(event) => { setWords(event.target.value); }} />}
      {data !== undefined && data.length > 0 && (
        <ul className="piano-list">
          {data.map((summary) => (
            <PianoCard key={summary.instrument.id} summary={summary} />
          ))}
        </ul>
      )}
      {data !== undefined && data.length < total && <button type="button" className="button" onClick={() => { setLimit(limit + PIANOS_SHOWN); }}>{say('shell.more', { shown: data.length, total })}</button>}
      {found !== undefined && <DemoBar hasDemo={found.demo} />}
      {adding && (
        <Suspense fallback={null}>
          <PianoDialog
            onClose={() => { setAdding(false); }}
            keep={async (draft) => (await addPiano(draft)).id}
            onKept={(pianoId) => void navigate({ to: '/pianos/$pianoId/story', params: { pianoId } })}
          />
        </Suspense>
      )}
    </section>
  );
}
