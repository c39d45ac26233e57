import type { KeyNumber } from '#instrument';
import { explainIssue } from '#text';
import type { LeadedKey } from '#workshop';
import { useMemo, useState } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { useEnter, useReadings } from '../../api/use-readings.ts';
import { useKept } from '../../kept/kept.ts';
import { ChooseKey } from '../../keys/choose-key.tsx';
import { useLocale, useSay } from '../../language/use-say.ts';
import { ProblemNote } from '../../shell/problem-note.tsx';
import { Choice } from '../../ui/choice.tsx';
import { Note } from '../../ui/note.tsx';
import { useStateAction } from '../use-state-action.ts';
import { DrillingLinks } from './drilling-links.tsx';
import { GatheredNotes } from './gathered-notes.tsx';
import { KeysWithLeads } from './keys-with-leads.tsx';
import { leadEntriesOf } from './lead-entries.ts';
import { type LeadGoal, jobsOf, questionedAs } from './lead-goal.ts';
import { LeadsLine } from './leads-line.tsx';
import { LeadsOutcome } from './leads-outcome.tsx';
import { LeadsTermsForm } from './leads-terms-form.tsx';
import { useLeads } from './use-leads.ts';
import { useLeadsCommands } from './use-leads-commands.ts';
import { useLeadsInput } from './use-leads-input.ts';
import './leads.css';

/** The leads of the keys: what holds for them, the working out, its result key by key, keeping it, and the sheet to drill by. */
export function LeadsView() {
  const say = useSay();
  const locale = useLocale();
  const { id, isCurrent } = usePiano();
  const { gathered, readings } = useLeadsInput();
  const planned = useReadings('planned');
  const enter = useEnter();
  const stating = useStateAction();
  const { state: { known: { answers, issues }, order, isRunning, wasEnded, hasFailed }, start, end } = useLeads();
  const of = order?.length ?? 0;
  const [goal, setGoal] = useKept<LeadGoal>(`wrestplank.leads.goal.${id}`, 'stated');
  const asked = useMemo(() => questionedAs(goal, gathered.keys), [goal, gathered]);
  const [started, setStarted] = useState<readonly LeadedKey[]>();
  const [kept, setKept] = useState<typeof answers>();
  const [key, setKey] = useState<KeyNumber>();
  const [isAsking, setAsking] = useState(false);
  const [isChoosing, setChoosing] = useState(false);
  const isOld = useMemo(() => started !== undefined && JSON.stringify(jobsOf(started)) !== JSON.stringify(jobsOf(asked)), [started, asked]);
  const run = (): void => {
    setStarted(asked);
    start(jobsOf(asked));
  };
  const keep = (): void => {
    const entries = leadEntriesOf(answers.filter(({ feasible }) => feasible), planned.values(), locale);
    if (entries.length > 0) enter({ state: 'planned', sessionId: null }, entries);
    setKept(answers);
  };
  useLeadsCommands({ canRun: gathered.keys.length > 0 && !isRunning, canWrite: isCurrent, hasResult: answers.length > 0, onRun: run, onTerms: () => { setAsking(true); }, onChoose: () => { setChoosing(true); } });
  return (
    <div className="leads">
      <Note tone="warn" role="note"><p>{say('leads.caution')}</p></Note>
      {isAsking
        ? <LeadsTermsForm isBusy={stating.isPending} onState={(terms, onKept) => { stating.mutate({ terms, onKept: () => { onKept(); setAsking(false); } }); }} onClose={() => { setAsking(false); }} />
        : <LeadsLine rules={gathered.rules} onChange={() => { setAsking(true); }} />}
      {stating.error !== null && <ProblemNote problem={stating.error} />}
      <section className="panel" aria-labelledby="leads-title">
        <h2 id="leads-title">{say('leads.title')}</h2>
        <p className="soft small">{say('leads.about')}</p>
        <Choice<LeadGoal> label={say('leads.goal')} value={goal} options={(['stated', 'inertia'] as const).map((value) => ({ value, label: say(`leads.goal.${value}`) }))} onChange={setGoal} hint={say('leads.goal.hint')} />
        {goal === 'inertia' && <Note tone="warn">{say('leads.goal.patents')}</Note>}
        <p>{say('leads.caution.key')}</p>
        <div className="row"><button type="button" className="button button-main" disabled={gathered.keys.length === 0 || isRunning} onClick={run}>{say('leads.run')}</button></div>
        {isRunning && (
          <div className="leads-running" role="status">
            <p>{say('leads.progress', { at: answers.length, of: of })}</p>
            <progress aria-label={say('leads.run')} max={of} value={answers.length} />
            <div><button type="button" className="button" onClick={end}>{say('leads.stop')}</button></div>
          </div>
        )}
        {hasFailed && <Note tone="bad" role="alert">{say('leads.failed')}</Note>}
        {issues.length > 0 && <Note tone="bad" role="alert"><ul>{issues.map((issue) => <li key={issue.path}>{explainIssue(say, issue, locale)}</li>)}</ul></Note>}
      </section>
      {!isRunning && answers.length > 0 && started !== undefined && (
        <>
          <LeadsOutcome keys={started} answers={answers} of={of} wasStopped={wasEnded} canWrite={isCurrent} isKept={kept === answers} isOld={isOld} onKeep={keep} />
          <KeysWithLeads keys={started} answers={answers} readings={readings} selected={key} onKey={setKey} />
        </>
      )}
      <GatheredNotes gathered={gathered} />
      <DrillingLinks />
      {isChoosing && <ChooseKey onKey={setKey} onClose={() => { setChoosing(false); }} />}
    </div>
  );
}
