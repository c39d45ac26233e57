import { remedyPlan } from '#workshop';
import type { WorkItem } from '#workshop';
import { useMemo, useState } from 'react';
import { usePiano } from '../api/piano.tsx';
import { useReadingBook } from '../api/use-readings.ts';
import { useTouch } from '../api/use-touch.ts';
import { useKept } from '../kept/kept.ts';
import { useSay } from '../language/use-say.ts';
import { ProblemNote } from '../shell/problem-note.tsx';
import { WhenReadings } from '../shell/when-readings.tsx';
import { Choice } from '../ui/choice.tsx';
import { AddWork } from './add-work.tsx';
import { SurveyView } from './survey/survey-view.tsx';
import { SheetHead } from './sheet-head.tsx';
import { useWorkWriting } from './use-work-writing.ts';
import { type WorkFilter, chooseWork, missingFrom, workFilters } from './work-order.ts';
import { WorkSheet } from './work-sheet.tsx';
import './work.css';

type WorkView = 'survey' | 'jobs';

/** The survey that work comes from, and the jobs. */
export function WorkPage() {
  const say = useSay();
  const { id, work, observations } = usePiano();
  const [view, setView] = useKept<WorkView>(`wrestplank.work.view.${id}`, work.length > 0 || observations.length === 0 ? 'jobs' : 'survey');
  return (
    <>
      <div className="work-views no-print">
        <Choice<WorkView> label={say('work.view')} value={view} options={(['survey', 'jobs'] as const).map((value) => ({ value, label: say(`work.view.${value}`) }))} onChange={setView} />
      </div>
      {view === 'survey' ? <SurveyView /> : <JobsView />}
    </>
  );
}

/** What is to be done at the bench, in its order: from the findings and by hand, printable, each done job asking to be weighed again. */
function JobsView() {
  return <WhenReadings><Work /></WhenReadings>;
}

function Work() {
  const say = useSay();
  const { cycle, isCurrent } = usePiano();
  const { work, ...writing } = useWorkWriting();
  const analysis = useTouch('found');
  const weighed = useReadingBook();
  const fresh = useMemo(() => missingFrom(work, remedyPlan(analysis, cycle)), [work, analysis, cycle]);
  const [filter, setFilter] = useState<WorkFilter>(() => (work.some(({ status }) => status === 'open') ? 'open' : 'all'));
  const [justChanged, setJustChanged] = useState<ReadonlySet<string>>(new Set());
  const shown = chooseWork(work, filter, justChanged);
  const change = (item: WorkItem, status: WorkItem['status']): void => {
    setJustChanged((before) => new Set([...before, item.id]));
    writing.change(item, status);
  };
  const countOf = (one: WorkFilter): number => chooseWork(work, one, new Set()).length;
  return (
    <div className="page work-page">
      <SheetHead />
      <div className="row work-bar no-print">
        {work.length > 0 && (
          <Choice
            label={say('work.filter')}
            value={filter}
            options={workFilters.filter((one) => one !== 'dropped' || countOf(one) > 0 || filter === one).map((one) => ({ value: one, label: `${say(`work.filter.${one}`)} ${String(countOf(one))}` }))}
            onChange={(next) => { setFilter(next); setJustChanged(new Set()); }}
          />
        )}
        {isCurrent && fresh.length > 0 && (
          <button type="button" className="button button-main" disabled={writing.isBusy} onClick={() => { setFilter('open'); writing.add(fresh); }}>{say('work.fromFindings', { count: fresh.length })}</button>
        )}
        {shown.length > 0 && <button type="button" className="button" onClick={() => { window.print(); }}>{say('work.print')}</button>}
      </div>
      {writing.problem !== null && <ProblemNote problem={writing.problem} />}
      {work.length === 0 && fresh.length === 0 && (
        <section className="panel no-print">
          <h2>{say('work.empty.title')}</h2>
          <p>{say('work.empty.text')}</p>
        </section>
      )}
      {work.length > 0 && shown.length === 0 && <p className="soft">{say(`work.none.${filter}`)}</p>}
      <WorkSheet work={shown} weighed={weighed} onStatus={change} isReadOnly={!isCurrent} />
      {isCurrent && <AddWork onAdd={(draft) => { setFilter('open'); writing.add([{ ...draft, cycle }]); }} />}
    </div>
  );
}
