import { type Rescaled } from '#strings';
import { useState } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { useFigures, useSay } from '../../language/use-say.ts';
import { Note } from '../../ui/note.tsx';
import { keysSaid } from './key-runs.ts';
import { sayObjective } from './say-objective.ts';

interface OutcomeProps {
  readonly rescaled: Rescaled;
  readonly wasStopped: boolean;
  readonly isOld: boolean;
  /** Notes it would write. */
  readonly notes: number;
  readonly isFull: boolean;
  readonly canWrite: boolean;
  readonly onTry: () => void;
  readonly onPlan: () => void;
  readonly onCompare: () => void;
}

/** What came of a rescale, in words: how good it is known to be, what it pulls, what holds it back, and what to do with it. */
export function Outcome({ rescaled, wasStopped, isOld, notes, isFull, canWrite, onTry, onPlan, onCompare }: OutcomeProps) {
  const say = useSay();
  const figure = useFigures();
  const { compass } = usePiano();
  const [done, setDone] = useState<{ readonly of: Rescaled; readonly what: 'tried' | 'planned' }>();
  const { objective, lowerBound, proven, totalTensionN, activeLimits } = rescaled;
  const gap = objective > 0 && Number.isFinite(lowerBound) ? (100 * (objective - lowerBound)) / objective : undefined;
  return (
    <section className="panel" aria-labelledby="rescale-result">
      <h2 id="rescale-result">{say('rescale.result')}</h2>
      {isOld && <Note tone="warn">{say('rescale.result.old')}</Note>}
      <p>
        {wasStopped && <>{say('rescale.result.stopped')} </>}
        <strong>{proven ? say('rescale.result.proven') : gap === undefined ? say('rescale.result.noBound') : say('rescale.result.gap', { gap: figure(gap, gap < 1 ? 2 : 1) })}</strong>{' '}
        <span className="soft small">{say('rescale.result.objective', { objective: sayObjective(objective, figure), bound: sayObjective(lowerBound, figure) })}</span>
      </p>
      <p>{say('rescale.result.total', { total: figure(totalTensionN / 1000, 2) })}</p>
      {activeLimits.length === 0 ? <p>{say('rescale.result.free')}</p> : (
        <>
          <p>{say('rescale.result.active')}</p>
          <ul>{activeLimits.map(({ limit, keys }) => <li key={limit}>{say(`rescale.limit.${limit}`)} <span className="soft small">{keysSaid(compass, keys)}</span></li>)}</ul>
        </>
      )}
      <div className="row">
        {canWrite && <button type="button" className="button button-main" onClick={() => { onPlan(); setDone({ of: rescaled, what: 'planned' }); }}>{say('rescale.result.plan', { count: notes })}</button>}
        {canWrite && <button type="button" className="button" onClick={() => { onTry(); setDone({ of: rescaled, what: 'tried' }); }}>{say('rescale.result.try')}</button>}
        <button type="button" className="button" disabled={isFull} onClick={onCompare}>{say('rescale.result.compare')}</button>
      </div>
      {isFull && <p className="soft small">{say('rescale.result.full')}</p>}
      <p role="status">{done?.of === rescaled && say(`rescale.result.${done.what}`)}</p>
    </section>
  );
}
