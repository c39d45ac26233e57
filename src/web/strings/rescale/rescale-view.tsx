import type { ScaleAnalysis } from '#strings';
import type { Issue } from '#result';
import { type RescaleWish, rescaleProblemOf } from '#workshop';
import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { useReadingBook } from '../../api/use-readings.ts';
import { useKept } from '../../kept/kept.ts';
import { useLocale, useSay } from '../../language/use-say.ts';
import { Note } from '../../ui/note.tsx';
import type { TrialDesk } from '../use-trial.ts';
import { ComparePlans } from './compare-plans.tsx';
import { Outcome } from './outcome.tsx';
import { planAnalysisOf } from './plan.ts';
import { type KeptPlans, NO_PLANS, withPlan } from './kept-plans.ts';
import { Refusal } from './refusal.tsx';
import { type RescaleDraft, TRADE_STEPS, usualDraft, weightsAt, wishOf } from './rescale-draft.ts';
import { RescaleForm } from './rescale-form.tsx';
import { RunState } from './run-state.tsx';
import { TradeOff } from './trade-off.tsx';
import { planOfRun } from './run-plan.ts';
import { useRescale } from './use-rescale.ts';
import './rescale.css';

/** What a reckoning was started with, to tell when the form has moved on, and to turn its result into sizes. */
interface Started {
  readonly draft: RescaleDraft;
  readonly wish: RescaleWish;
  readonly isTrade: boolean;
}

/** Rescaling: a form of what there is and what matters, the reckoning beside the page, its result, the trade-off, and plans compared. */
export function RescaleView({ found, trial }: { readonly found: ScaleAnalysis | undefined; readonly trial: TrialDesk }) {
  const say = useSay();
  const locale = useLocale();
  const piano = usePiano();
  const book = useReadingBook();
  const { id, cycle, scale: terms, isCurrent } = piano;
  const standing = useMemo(() => planAnalysisOf(piano, book, NOTHING, locale), [piano, book, locale]);
  const [kept, setDraft] = useKept<RescaleDraft | null>(`wrestplank.rescale.${id}.${String(cycle)}`, null);
  const draft = useMemo(() => kept ?? usualDraft(terms, standing, locale), [kept, terms, standing, locale]);
  const [plans, setPlans] = useKept<KeptPlans>(`wrestplank.plans.${id}.${String(cycle)}`, NO_PLANS);
  const [issues, setIssues] = useState<readonly Issue[]>([]);
  const [started, setStarted] = useState<Started>();
  const [chosen, setChosen] = useState(0);
  const { state, start, stop } = useRescale();
  const outcome = useRef<HTMLDivElement>(null);
  const isDone = issues.length > 0 || (!state.isRunning && state.runs.length > 0);
  // What came of it is where the eyes and the keyboard go on.
  useEffect(() => { if (isDone) outcome.current?.focus(); }, [isDone, issues]);
  const run = state.runs[started?.isTrade === true ? chosen : 0];
  const lockedKeys = started?.wish.lockedKeys;
  const result = useMemo(() => (run === undefined || lockedKeys === undefined ? undefined : planOfRun(run, lockedKeys, locale)), [run, lockedKeys, locale]);
  const begin = useCallback((isTrade: boolean): void => {
    const wish = wishOf(draft, terms, locale);
    if (!wish.ok) { setIssues(wish.issues); return; }
    const problem = rescaleProblemOf(standing, wish.value, terms);
    setIssues(problem.ok ? [] : problem.issues);
    if (!problem.ok) return;
    setStarted({ draft, wish: wish.value, isTrade });
    setChosen(isTrade ? draft.trade : 0);
    start(isTrade ? Array.from({ length: TRADE_STEPS }, (_, trade) => ({ ...problem.value, weights: weightsAt(trade, draft) })) : [problem.value]);
  }, [draft, locale, standing, start, terms]);
  return (
    <div className="rescale">
      <RescaleForm draft={draft} standing={standing} issues={issues} isRunning={state.isRunning} onChange={setDraft} onRun={() => { begin(false); }} onTrade={() => { begin(true); }}>
        <RunState state={state} onStop={stop} />
      </RescaleForm>
      <div className="rescale-outcome" ref={outcome} tabIndex={-1} role="group" aria-label={say('rescale.result')}>
        {issues.length > 0 && <Refusal issues={issues} />}
        {state.hasFailed && <Note tone="bad" role="alert">{say('rescale.failed')}</Note>}
        {started?.isTrade === true && <TradeOff runs={state.runs} standing={standing} chosen={chosen} onChoose={setChosen} />}
        {run?.result.ok === false && <Refusal issues={run.result.issues} problem={run.problem} />}
        {run?.result.ok === true && result !== undefined && (
          <Outcome
            rescaled={run.result.value} wasStopped={run.wasStopped} isOld={started !== undefined && started.draft !== draft} notes={Object.keys(result).length}
            isFull={plans.length >= 2} canWrite={isCurrent}
            onTry={() => { trial.lay(result); }} onPlan={() => { trial.plan(result); }} onCompare={() => { setPlans(withPlan(plans, result)); }}
          />
        )}
        <ComparePlans found={found} result={result} plans={plans} canWrite={isCurrent} onLetGo={(letter) => { setPlans(plans.filter((plan) => plan.letter !== letter)); }} onPlan={(sizes) => { trial.plan(sizes); }} />
      </div>
    </div>
  );
}

const NOTHING = {};
