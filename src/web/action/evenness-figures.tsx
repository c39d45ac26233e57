import { noteNameOf } from '#instrument';
import type { ReactNode } from 'react';
import { usePiano } from '../api/piano.tsx';
import { useSay } from '../language/use-say.ts';
import type { StateAnalysis } from './state-analysis.ts';
import { useEvenness } from './use-evenness.tsx';

/** How even the keys are. The capability-style figure stands only beside the count it belongs to. */
export function EvennessFigures({ state, analysis }: StateAnalysis) {
  const say = useSay();
  const { compass, intent } = usePiano();
  const { judged, inside, insideGuarded, medianG, largestStepG, largestStepKeys, outliers, capability } = analysis.summary;
  const show = useEvenness(state, analysis);
  const names = (list: readonly number[]): string => list.map((key) => noteNameOf(compass, key)).join(', ');
  const rows: readonly (readonly [label: string, figure: ReactNode, beside?: string])[] = [
    ...(medianG === undefined ? [] : [[say('action.even.median'), show(say('action.even.median'), 'median', medianG, 1, true)] as const]),
    ...(largestStepG === undefined ? [] : [[say('action.even.step'), show(say('action.even.step'), 'largestStep', largestStepG, 1, true), largestStepKeys === undefined ? '' : largestStepKeys.map((key) => noteNameOf(compass, key)).join('–')] as const]),
    ...(intent === null ? [] : [[say('action.even.inside'), show(say('action.even.inside'), 'inside', inside, 0, false), say('action.even.of', { judged })] as const]),
    ...(intent === null || insideGuarded === undefined ? [] : [[say('action.even.guarded'), show(say('action.even.guarded'), 'insideGuarded', insideGuarded, 0, false), say('action.even.of', { judged })] as const]),
    ...(intent === null || capability === undefined ? [] : [[say('action.even.capability'), show(say('action.even.capability'), 'capability', capability, 2, false), say('action.even.beside', { inside, judged })] as const]),
    ...(outliers.length === 0 ? [] : [[say('action.even.outliers'), show(say('action.even.outliers'), 'outliers', outliers.length, 0, false), names(outliers)] as const]),
  ];
  if (rows.length === 0) return null;
  return (
    <dl className="even-figures">
      {rows.map(([label, shown, beside]) => (
        <div key={label}>
          <dt>{label}</dt>
          <dd>{shown} {beside !== undefined && <span className="soft small">{beside}</span>}</dd>
        </div>
      ))}
    </dl>
  );
}
