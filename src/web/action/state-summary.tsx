import type { TouchAnalysis } from '#action';
import { type State, noteNameOf } from '#instrument';
import { usePiano } from '../api/piano.tsx';
import { useFigures, useSay } from '../language/use-say.ts';
import { StateMark } from '../leaves/state-mark.tsx';
import type { StateAnalysis } from './state-analysis.ts';

interface StateSummaryProps {
  readonly analyses: readonly StateAnalysis[];
  readonly state: State;
  readonly onState: (state: State) => void;
}

/** The states side by side, each in a few words; pressing one shows its keys. */
export function StateSummary({ analyses, state, onState }: StateSummaryProps) {
  const say = useSay();
  return (
    <div className="summary" role="group" aria-label={say('action.summary')}>
      {analyses.map((one) => (
        <button key={one.state} type="button" className="summary-state" aria-pressed={one.state === state} onClick={() => { onState(one.state); }}>
          <StateMark state={one.state} />
          <Lines analysis={one.analysis} />
        </button>
      ))}
    </div>
  );
}

function Lines({ analysis: { summary } }: { readonly analysis: TouchAnalysis }) {
  const say = useSay();
  const figure = useFigures();
  const { compass, intent } = usePiano();
  const { measured, keys, judged, inside, outcomes, medianG, largestStepG, largestStepKeys, outliers, upWeightLow, doubtful } = summary;
  const name = (key: number): string => noteNameOf(compass, key);
  return (
    <>
      <strong className="summary-count">{intent === null ? say('action.summary.measured', { measured, keys }) : say('action.summary.inside', { inside, judged })}</strong>
      <span>
        {[
          intent === null ? '' : say('action.summary.measured', { measured, keys }),
          medianG === undefined ? '' : say('action.summary.median', { value: figure(medianG, 1, 'g') }),
          largestStepG === undefined ? '' : say('action.summary.step', { value: figure(largestStepG, 1, 'g'), keys: largestStepKeys?.map(name).join('–') ?? '' }),
          outcomes === 0 ? '' : say('action.summary.outcomes', { count: outcomes }),
          upWeightLow === 0 ? '' : say('action.summary.upWeightLow', { count: upWeightLow }),
          doubtful === 0 ? '' : say('action.summary.doubtful', { count: doubtful }),
          outliers.length === 0 ? '' : say('action.summary.outliers', { count: outliers.length, keys: outliers.map(name).join(', ') }),
        ].filter((part) => part !== '').join(' · ')}
      </span>
    </>
  );
}
