import { tuningVisitsOf, wearOf } from '#workshop';
import { useMemo } from 'react';
import { usePiano } from '../api/piano.tsx';
import { useDays, useSay } from '../language/use-say.ts';
import { CalendarPut } from './calendar-put.tsx';
import { PlanForm } from './plan-form.tsx';
import { useCare } from './use-care.ts';
import { WearTable } from './wear-table.tsx';

const VISITS_TOLD = 4;

/** The plan of care: the tunings to come, the wear, and both into the calendar of the shop. */
export function PlanPanel({ isPlanning, onPlan }: { readonly isPlanning: boolean; readonly onPlan: (isPlanning: boolean) => void }) {
  const say = useSay();
  const dayOf = useDays();
  const { isCurrent } = usePiano();
  const { plan, start } = useCare();
  const wear = useMemo(() => (plan === undefined ? [] : wearOf(plan, start.strungOn, start.today)), [plan, start.strungOn, start.today]);
  return (
    <section className="panel" aria-labelledby="care-plan">
      <div className="row row-between">
        <h2 id="care-plan">{say('care.plan')}</h2>
        {isCurrent && !isPlanning && <button type="button" className="button no-print" onClick={() => { onPlan(true); }}>{say(plan === undefined ? 'care.plan.begin' : 'care.change')}</button>}
      </div>
      {isPlanning && isCurrent && <PlanForm plan={plan} onClose={() => { onPlan(false); }} />}
      {plan === undefined ? !isPlanning && <p>{say('care.plan.none')}</p> : (
        <>
          {plan.remark !== '' && <p>{plan.remark}</p>}
          <h3>{say('care.visits')}</h3>
          <ul>{tuningVisitsOf(start, VISITS_TOLD).map((day) => <li key={day}>{dayOf(day)}{day < start.today && <strong> {say('care.visits.overdue')}</strong>}</li>)}</ul>
          <h3>{say('care.wear')}</h3>
          {wear.length === 0 ? <p>{say('care.wear.none')}</p> : <WearTable wear={wear} />}
          <CalendarPut start={start} wear={wear} />
        </>
      )}
    </section>
  );
}
