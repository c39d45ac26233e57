import type { WorkItem } from '#workshop';
import { remedyPlan } from '#workshop';
import { useMutation } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useMemo, useState } from 'react';
import { call } from '../api/client.ts';
import { usePiano } from '../api/piano.tsx';
import { refreshPiano } from '../api/queries.ts';
import { useTouch } from '../api/use-touch.ts';
import { useSay } from '../language/use-say.ts';
import { ProblemNote } from '../shell/problem-note.tsx';
import { Note } from '../ui/note.tsx';
import { AddWork } from './add-work.tsx';
import { WorkSheet } from './work-sheet.tsx';
import { missingFrom } from './work-order.ts';
import './work.css';

/** What is to be done at the bench, in its order: from the findings and by hand, printable, each done item asking for its re-measurement. */
export function WorkPage() {
  const say = useSay();
  const { id, cycle, isCurrent, work, instrument } = usePiano();
  const analysis = useTouch('found');
  const fresh = useMemo(() => missingFrom(work, remedyPlan(analysis, cycle)), [work, analysis, cycle]);
  const [justDone, setJustDone] = useState<WorkItem>();
  const writing = useMutation({ mutationFn: (write: () => Promise<unknown>) => write(), onSuccess: () => refreshPiano(id) });
  const change = (item: WorkItem, status: WorkItem['status']): void => {
    setJustDone(status === 'done' ? item : undefined);
    writing.mutate(() => call('changeWork', { params: { id, wid: item.id }, body: { status } }));
  };
  return (
    <div className="page">
      <header className="print-only">
        <h1>{say('work.sheet', { piano: instrument.name })}</h1>
      </header>
      <div className="row no-print">
        {isCurrent && fresh.length > 0 && (
          <button type="button" className="button button-main" disabled={writing.isPending} onClick={() => { writing.mutate(() => call('addWork', { params: { id }, body: { items: [...fresh] } })); }}>
            {say('work.fromFindings', { count: fresh.length })}
          </button>
        )}
        {work.length > 0 && <button type="button" className="button" onClick={() => { window.print(); }}>{say('work.print')}</button>}
      </div>
      {writing.error !== null && <ProblemNote problem={writing.error} />}
      {justDone !== undefined && justDone.remeasure.length > 0 && <Remeasure item={justDone} />}
      {work.length === 0 && fresh.length === 0 && (
        <section className="panel">
          <h2>{say('work.empty.title')}</h2>
          <p>{say('work.empty.text')}</p>
        </section>
      )}
      <WorkSheet work={work} onStatus={change} isReadOnly={!isCurrent} />
      {isCurrent && <AddWork onAdd={(draft) => { writing.mutate(() => call('addWork', { params: { id }, body: { items: [{ ...draft, cycle }] } })); }} />}
    </div>
  );
}

/** Asks for the figures that tell whether the work has helped. */
function Remeasure({ item }: { readonly item: WorkItem }) {
  const say = useSay();
  const { id } = usePiano();
  const names = item.remeasure.map((quantity) => say(`quantity.${quantity}.name` as 'quantity.downWeightG.name')).join(', ');
  return (
    <div className="no-print">
      <Note tone="accent" role="status">
        <p>{item.key === null ? say('work.remeasure', { what: names }) : say('work.remeasure.key', { key: item.key, what: names })}</p>
        <p>
          <Link className="button" to="/pianos/$pianoId/readings" params={{ pianoId: id }} search={(search) => search}>{say('work.remeasure.go')}</Link>
        </p>
      </Note>
    </div>
  );
}
