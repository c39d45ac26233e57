import type { LeastWork } from '#action';
import type { ActionTerms, KeyNumber, TouchIntent } from '#instrument';
import { leastWorkSignsOf } from '#plot';
import { type GatheredWork, jobsOf, leastWorkInputOf } from '#workshop';
import { type ReactNode, useMemo, useState } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { useReadings } from '../../api/use-readings.ts';
import { useTouch } from '../../api/use-touch.ts';
import { ChooseKey } from '../../keys/choose-key.tsx';
import { KeysWithPlots } from '../../keys/keys-with-plots.tsx';
import { useSay } from '../../language/use-say.ts';
import { IssueList } from '../../shell/issue-list.tsx';
import { ProblemNote } from '../../shell/problem-note.tsx';
import { Note } from '../../ui/note.tsx';
import { useChooseView } from '../choose-view.ts';
import { SheetLinks } from '../regulation/sheet-links.tsx';
import { NothingTaken } from '../terms/nothing-taken.tsx';
import { useStateAction } from '../use-state-action.ts';
import { TakeWork, useTakeWork } from './take-work.tsx';
import { useLeastWork } from './use-least-work.ts';
import { useWorkCommands } from './use-work-commands.ts';
import { WorkAnswer, WorkStages } from './work-answer.tsx';
import { WorkKeyPanel } from './work-key-panel.tsx';
import { OutOfReach, RoomNote, WorkNotes } from './work-notes.tsx';
import { WorkPlots } from './work-plots.tsx';
import type { BehindPlan } from './work-stories.ts';
import { WorkTermsForm } from './work-terms-form.tsx';
import './least-work.css';

/** The work that brings every key inside what is asked in the fewest minutes, by the shop's own times. */
export function LeastWorkView() {
  const say = useSay();
  const { intent } = usePiano();
  const chooseView = useChooseView();
  if (intent !== null) return <Asked intent={intent} />;
  return <NothingTaken title={say('leastWork.noIntent.title')} lines={[say('leastWork.noIntent.text')]} go={say('leastWork.noIntent.go')} onGo={() => { chooseView('measured'); }} />;
}

const hasMinutes = (terms: ActionTerms | null): boolean => terms !== null && terms.operationMinutes.length > 0;

function Asked({ intent }: { readonly intent: TouchIntent }) {
  const say = useSay();
  const { action, isCurrent } = usePiano();
  const [isAsking, setAsking] = useState(isCurrent && !hasMinutes(action));
  const [typed, setTyped] = useState<ActionTerms | undefined>();
  const stating = useStateAction();
  const close = (): void => { setAsking(false); };
  const terms = isAsking ? typed : action;
  const behind = useBehind(intent, terms ?? null);
  return (
    <>
      {isAsking
        ? <WorkTermsForm isBusy={stating.isPending} onTyped={setTyped} onState={(stated, onKept) => { stating.mutate({ terms: stated, onKept: () => { onKept(); close(); } }); }} onClose={close} />
        : <TermsLine onChange={() => { setAsking(true); }} />}
      {stating.error !== null && <ProblemNote problem={stating.error} />}
      {isAsking && typed === undefined && <Note tone="warn">{say('leastWork.waiting')}</Note>}
      <Answered {...behind} terms={terms ?? null} isAsking={isAsking} onTerms={() => { setAsking(true); }} />
    </>
  );
}

type Behind = Omit<BehindPlan, 'problem'> & { readonly gathered: GatheredWork };

/** The question, from the touch as found, what is asked and these terms. */
function useBehind(intent: TouchIntent, terms: ActionTerms | null): Behind {
  const { instrument, cycle } = usePiano();
  const found = useReadings('found');
  const touch = useTouch('found');
  const readings = useMemo(() => [...found.values()], [found]);
  const gathered = useMemo(() => leastWorkInputOf({ instrument, readings, cycle, intent, terms, touch }), [instrument, readings, cycle, intent, terms, touch]);
  return useMemo(() => ({ readings, touch, gathered }), [readings, touch, gathered]);
}

function TermsLine({ onChange }: { readonly onChange: () => void }) {
  const say = useSay();
  const { action, isCurrent, instrument: { kind } } = usePiano();
  const said = action === null || !hasMinutes(action)
    ? say('leastWork.terms.none')
    : say('leastWork.terms.stated', { jobs: action.operationMinutes.length, all: jobsOf(kind).length, friction: action.frictionLimit ?? 'none', room: action.workRoom ?? 'none' });
  return (
    <div className="row row-between terms-line">
      <p><strong>{said}</strong></p>
      {isCurrent && <button type="button" className="button no-print" onClick={onChange}>{say('leastWork.terms.change')}</button>}
    </div>
  );
}

interface AnsweredProps extends Behind {
  readonly terms: ActionTerms | null;
  readonly isAsking: boolean;
  readonly onTerms: () => void;
}

function Answered({ gathered, touch, readings, terms, isAsking, onTerms }: AnsweredProps) {
  const say = useSay();
  const { isCurrent } = usePiano();
  const { answered, isWorking, hasFailed } = useLeastWork(gathered.problem);
  const plan = answered?.result.ok === true ? answered.result.value : undefined;
  const taking = useTakeWork(plan);
  const isStated = !isAsking && !isWorking;
  const [key, setKey] = useState<KeyNumber>();
  const [isChoosing, setChoosing] = useState(false);
  const worked = useMemo(() => plan?.keys.flatMap((one) => (one.verdict === 'already' ? [] : [one.key])) ?? [], [plan]);
  useWorkCommands({
    worked, selected: key, canWrite: isCurrent, canTake: isCurrent && isStated && taking.fresh.length > 0,
    onKey: setKey, onChoose: () => { setChoosing(true); }, onTerms, onTake: taking.take,
  });
  if (gathered.problem === undefined) return <NoQuestion hasKeys={touch.summary.measured > 0} />;
  return (
    <>
      {hasFailed && <Note tone="bad" role="alert">{say('leastWork.failed')}</Note>}
      <p className="visually-hidden" role="status">{isWorking ? say('leastWork.working') : ''}</p>
      {answered?.result.ok === false && <Note tone="bad" role="alert"><p>{say('leastWork.refused')}</p><IssueList issues={answered.result.issues.slice(0, 5)} /></Note>}
      {plan === undefined || answered === undefined ? isWorking && <p className="soft">{say('leastWork.working')}</p> : (
        <div className={isWorking ? 'work-shown work-old' : 'work-shown'}>
          {terms?.workRoom === 'doubt' && <RoomNote gathered={gathered} />}
          <Plan plan={plan} terms={terms} behind={{ problem: answered.problem, touch, readings }} gathered={gathered} worked={worked} selected={key} onKey={setKey}>
            {isCurrent && <TakeWork taking={taking} planned={plan.planned} isStated={isStated} />}
            {!isAsking && <SheetLinks sheet="leastWork" state="found" />}
          </Plan>
        </div>
      )}
      {isChoosing && <ChooseKey onKey={setKey} onClose={() => { setChoosing(false); }} />}
    </>
  );
}

function NoQuestion({ hasKeys }: { readonly hasKeys: boolean }) {
  const say = useSay();
  if (hasKeys) return <Note>{say('leastWork.needMinutes')}</Note>;
  return <section className="panel"><h2>{say('leastWork.noKeys.title')}</h2><p>{say('leastWork.noKeys.text')}</p></section>;
}

interface PlanProps {
  readonly plan: LeastWork;
  readonly terms: ActionTerms | null;
  readonly behind: BehindPlan;
  readonly gathered: GatheredWork;
  readonly worked: readonly KeyNumber[];
  readonly selected: KeyNumber | undefined;
  readonly onKey: (key: KeyNumber) => void;
  readonly children: ReactNode;
}

function Plan({ plan, terms, behind, gathered, worked: [first], selected, onKey, children }: PlanProps) {
  const say = useSay();
  const signs = useMemo(() => leastWorkSignsOf(plan.keys, gathered.left), [plan, gathered]);
  return (
    <>
      <WorkAnswer plan={plan} terms={terms} behind={behind} />
      <KeysWithPlots
        signs={signs} selected={selected} onKey={onKey} keysLabel={say('leastWork.keyboard')} plotsLabel={say('leastWork.plots')}
        plots={(widthPx) => <WorkPlots touch={behind.touch} plans={plan.keys} widthPx={widthPx} selected={selected} onSelect={onKey} />}
      >
        {selected === undefined ? (
          <section className="panel">
            <h2>{say('action.choose')}</h2>
            <p>{say('leastWork.pick')}</p>
            {first !== undefined && <p><button type="button" className="button" onClick={() => { onKey(first); }}>{say('leastWork.first')}</button></p>}
          </section>
        ) : (
          <WorkKeyPanel keyNumber={selected} plan={plan} behind={behind} left={gathered.left} onKey={onKey} />
        )}
        <WorkStages plan={plan} terms={terms} />
        {children}
        <OutOfReach keys={plan.outOfReach} onKey={onKey} />
        <WorkNotes gathered={gathered} />
      </KeysWithPlots>
    </>
  );
}
