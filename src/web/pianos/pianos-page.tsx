import { useQuery } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { Suspense, lazy, useMemo, useState } from 'react';
import { addPiano } from '../api/mutations.ts';
import { pianosQuery } from '../api/queries.ts';
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
  const { data, error, refetch } = useQuery(pianosQuery);
  const [adding, setAdding] = useState(false);
  const commands = useMemo((): readonly Command[] => [
    { id: 'pianos.add', label: 'pianos.add', group: 'command.group.everywhere', shortcut: 'n', perform: () => { setAdding(true); } },
  ], []);
  useCommands(commands);
  const own = data?.filter(({ instrument }) => !instrument.demo);
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
      {own?.length === 0 && (
        <div className="panel pianos-empty">
          <h2>{say('pianos.empty.title')}</h2>
          <p>{say('pianos.empty.first')}</p>
          <p>{say('pianos.empty.why')}</p>
        </div>
      )}
      {data !== undefined && data.length > 0 && (
        <ul className="piano-list">
          {data.map((summary) => (
            <PianoCard key={summary.instrument.id} summary={summary} />
          ))}
        </ul>
      )}
      {data !== undefined && <DemoBar hasDemo={data.some(({ instrument }) => instrument.demo)} />}
      {adding && (
        <Suspense fallback={null}>
          <PianoDialog
            onClose={() => { setAdding(false); }}
            onSave={async (draft) => {
              const { id } = await addPiano(draft);
              await navigate({ to: '/pianos/$pianoId/story', params: { pianoId: id } });
            }}
          />
        </Suspense>
      )}
    </section>
  );
}
