import type { PlannedKey } from '#action';
import { type ActionTermsDraft, type Compass, type KeyNumber, midiOf, noteNameOf } from '#instrument';
import type { KeySign } from '#plot';
import { useMemo, useState } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { useEnter, useReadings } from '../../api/use-readings.ts';
import { ChooseKey } from '../../keys/choose-key.tsx';
import { KeysWithPlots } from '../../keys/keys-with-plots.tsx';
import { useLocale, useSay } from '../../language/use-say.ts';
import { ProblemNote } from '../../shell/problem-note.tsx';
import { toast } from '../../toast/toasts.ts';
import { Asked } from '../asked.tsx';
import { useStateAction } from '../use-state-action.ts';
import { Consequences } from './consequences.tsx';
import { usePlanCommands } from './plan-commands.ts';
import { impossibleOf, planEntriesOf } from './plan-entries.ts';
import { PlanAssumed, PlanFlags } from './plan-notes.tsx';
import { PlanPlots } from './plan-plots.tsx';
import { PlanTermsForm } from './plan-terms-form.tsx';
import { PlanTermsLine } from './plan-terms-line.tsx';
import { TryShifts } from './try-shifts.tsx';
import { type Plan, usePlan, useShifts } from './use-plan.ts';

/** The touch planned: what is to be even, what it is reckoned with, what may be moved, and what every key then needs. */
export function PlanView() {
  const say = useSay();
  const { compass, isCurrent, action } = usePiano();
  const desk = useShifts();
  const plan = usePlan(desk.read);
  const stating = useStateAction();
  const keep = useKeepPlan(plan);
  const [isAsking, setAsking] = useState(false);
  const [isStating, setStating] = useState(false);
  const [key, setKey] = useState<KeyNumber>();
  const [isChoosing, setChoosing] = useState(false);
  const state = (terms: ActionTermsDraft, onKept: () => void): void => { stating.mutate({ terms, onKept }); };
  usePlanCommands({
    canWrite: isCurrent, canKeep: keep !== undefined, isTried: desk.isChanged,
    onTerms: () => { setStating(true); }, onKeep: () => { keep?.(); }, onDrop: desk.drop, onChoose: () => { setChoosing(true); },
  });
  const chosen = plan?.keys.find(({ plan: { key: own } }) => own === key) ?? middleOf(plan, compass);
  return (
    <>
      <Asked analysis={undefined} isAsking={isAsking} onAsking={setAsking} />
      {isStating
        ? <PlanTermsForm isBusy={stating.isPending} onState={(terms, onKept) => { state(terms, () => { onKept(); setStating(false); }); }} onClose={() => { setStating(false); }} />
        : <PlanTermsLine onChange={() => { setStating(true); }} />}
      {stating.error !== null && <ProblemNote problem={stating.error} />}
      {plan === undefined ? <p className="soft">{say('plan.noIntent')}</p> : (
        <>
          <TryShifts desk={desk} isPastCentre={plan.isPastCentre} onState={isCurrent ? () => { state({ ...(action ?? {}), ...desk.read.terms }, desk.drop); } : undefined} />
          {keep !== undefined && isCurrent && (
            <div className="row">
              <button type="button" className="button button-main" onClick={keep}>{say('plan.keep', { count: plan.keys.length })}</button>
              <span className="soft small">{say('plan.keep.about')}</span>
            </div>
          )}
          {plan.keys.length > 0 && (
            <KeysWithPlots
              signs={signsOf(plan.keys)} selected={chosen?.plan.key} onKey={setKey} keysLabel={say('plan.keys')} plotsLabel={say('plan.plots')}
              plots={(widthPx) => <PlanPlots plan={plan} widthPx={widthPx} selected={chosen?.plan.key} onSelect={setKey} />}
            >
              {chosen !== undefined && <KeyOfPlan plan={plan} planned={chosen} />}
              <PlanFlags plan={plan} onKey={setKey} />
              <PlanAssumed plan={plan} />
            </KeysWithPlots>
          )}
          {plan.keys.length === 0 && <PlanAssumed plan={plan} />}
        </>
      )}
      {isChoosing && <ChooseKey onKey={setKey} onClose={() => { setChoosing(false); }} />}
    </>
  );
}

function KeyOfPlan({ plan, planned }: { readonly plan: Plan; readonly planned: PlannedKey }) {
  const say = useSay();
  const { compass } = usePiano();
  const { key } = planned.plan;
  const title = say('action.key', { note: noteNameOf(compass, key), key });
  return (
    <section className="panel key-panel" aria-label={title}>
      <h2>{title}</h2>
      <Consequences plan={plan} planned={planned} />
      <p className="soft small">{say('plan.mass')}</p>
    </section>
  );
}

/** Writes every planned figure as one step; `undefined` where there is none, or some cannot be. */
function useKeepPlan(plan: Plan | undefined): (() => void) | undefined {
  const say = useSay();
  const locale = useLocale();
  const enter = useEnter();
  const planned = useReadings('planned');
  const isPossible = useMemo(() => plan !== undefined && plan.keys.length > 0 && impossibleOf(plan.keys).length === 0, [plan]);
  if (plan === undefined || !isPossible) return undefined;
  return () => {
    const entries = planEntriesOf(plan.keys, planned.values(), locale);
    if (entries.length > 0) enter({ state: 'planned', sessionId: null }, entries);
    toast(say('plan.kept', { count: plan.keys.length }));
  };
}

/** Middle C by its pitch. */
const MIDDLE_MIDI = 60;

/** The planned key nearest to middle C, until one is chosen. */
function middleOf(plan: Plan | undefined, compass: Compass): PlannedKey | undefined {
  const away = ({ plan: { key } }: PlannedKey): number => Math.abs(midiOf(compass, key) - MIDDLE_MIDI);
  return plan?.keys.reduce<PlannedKey | undefined>((nearest, each) => (nearest === undefined || away(each) < away(nearest) ? each : nearest), undefined);
}

function signsOf(keys: readonly PlannedKey[]): ReadonlyMap<KeyNumber, KeySign> {
  return new Map(keys.map(({ plan: { key }, flags: [first] }): readonly [KeyNumber, KeySign] => {
    if (first === undefined) return [key, 'inside'];
    return [key, first.name === 'belowReach' ? 'under' : first.name === 'upWeightLow' || first.name === 'noReturn' ? 'slow' : 'over'];
  }));
}
