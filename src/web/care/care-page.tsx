import { useState } from 'react';
import { useSheetAddress } from '../action/regulation/sheet-links.tsx';
import { usePiano } from '../api/piano.tsx';
import { useSay } from '../language/use-say.ts';
import { ProblemNote } from '../shell/problem-note.tsx';
import { AirPanel } from './air-panel.tsx';
import { MovesPanel } from './moves-panel.tsx';
import { PlanPanel } from './plan-panel.tsx';
import { SeasonPanel } from './season-panel.tsx';
import { useAir } from './use-care.ts';
import './care.css';

/** How the piano is cared for: the air it stands in, what the season does to it, the plan of care, its moves, and the owner’s sheet. */
export function CarePage() {
  const say = useSay();
  const { instrument } = usePiano();
  const address = useSheetAddress('owner', 'finished');
  const { air, error, refetch } = useAir();
  const [isPlanning, plan] = useState(false);
  return (
    <div className="page care" key={instrument.id}>
      <div className="row row-between no-print">
        <p className="soft small">{say('care.sheet.about')}</p>
        <a className="button" href={address('pdf')} target="_blank" rel="noreferrer">{say('care.sheet')}</a>
      </div>
      {error !== null && <ProblemNote problem={error} onRetry={refetch} />}
      {air === undefined ? error === null && <p className="soft">{say('shell.loading')}</p> : <AirPanel air={air} />}
      <PlanPanel isPlanning={isPlanning} onPlan={plan} />
      {air !== undefined && <SeasonPanel air={air} />}
      <MovesPanel />
    </div>
  );
}
