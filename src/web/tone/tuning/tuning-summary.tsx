import { noteNameOf } from '#instrument';
import { meanOf, medianOf } from '#numerics';
import { usePiano } from '../../api/piano.tsx';
import { useFigures, useSay } from '../../language/use-say.ts';
import type { Tuning } from './use-tuning.ts';

/** How each state lies against the curve, and its unisons, in words. */
export function TuningSummary({ tuning: { read } }: { readonly tuning: Tuning }) {
  const say = useSay();
  const figure = useFigures();
  const { compass, tuning: terms } = usePiano();
  const tolerance = terms?.curveToleranceCt ?? null;
  return (
    <>
      {read.map(({ state, off, unisons }) => {
        const [values, spreads] = [[...off.values()], [...unisons]];
        const widest = spreads.reduce<readonly [number, number] | undefined>((most, one) => (most === undefined || one[1] > most[1] ? one : most), undefined);
        const name = say(`state.${state}`);
        return (
          <div key={state}>
            {values.length > 0 && (
              <p>
                {say('tuning.summary.off', { state: name, count: values.length, mean: figure(meanOf(values), 1, 'ct', true), spread: `± ${figure(medianOf(values.map((value) => Math.abs(value - meanOf(values)))), 1, 'ct')}` })}
                {tolerance !== null && ` ${say('tuning.summary.inside', { inside: values.filter((value) => Math.abs(value) <= tolerance).length, count: values.length, tolerance: figure(tolerance, 1, 'ct') })}`}
              </p>
            )}
            {widest !== undefined && <p>{say('tuning.summary.unison', { state: name, count: spreads.length, median: figure(medianOf(spreads.map(([, value]) => value)), 1, 'ct'), widest: figure(widest[1], 1, 'ct'), note: noteNameOf(compass, widest[0]) })}</p>}
          </div>
        );
      })}
      {tolerance === null && read.length > 0 && <p className="soft small">{say('tuning.notAsked')}</p>}
    </>
  );
}
