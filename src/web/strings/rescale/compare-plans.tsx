import { noteNameOf } from '#instrument';
import type { ScaleAnalysis } from '#strings';
import { type ReactNode, useMemo } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { useReadingBook } from '../../api/use-readings.ts';
import { useFigures, useLocale, useSay } from '../../language/use-say.ts';
import type { Trial } from '../trial.ts';
import type { KeptPlans } from './kept-plans.ts';
import { type PlanTotals, planAnalysisOf, totalsOf } from './plan.ts';
import { PlanPlots } from './plan-plots.tsx';

interface ComparePlansProps {
  readonly found: ScaleAnalysis | undefined;
  readonly result: Trial | undefined;
  readonly plans: KeptPlans;
  readonly canWrite: boolean;
  readonly onLetGo: (letter: KeptPlans[number]['letter']) => void;
  readonly onPlan: (sizes: Trial) => void;
}

/** Up to three plans side by side: as found, and two that were kept to compare, or the result at hand where there is room. */
export function ComparePlans({ found, result, plans, canWrite, onLetGo, onPlan }: ComparePlansProps) {
  const say = useSay();
  const piano = usePiano();
  const book = useReadingBook();
  const locale = useLocale();
  const columns = useMemo(() => {
    const worked = [
      ...plans.map(({ letter, sizes }) => ({ name: say('rescale.plan.kept', { letter }), letter, sizes })),
      ...(result === undefined || plans.length >= 2 || plans.some(({ sizes }) => JSON.stringify(sizes) === JSON.stringify(result)) ? [] : [{ name: say('rescale.plan.result'), letter: undefined, sizes: result }]),
    ].map((plan) => ({ ...plan, analysis: planAnalysisOf(piano, book, plan.sizes, locale) }));
    const standing = found === undefined ? [] : [{ name: say('rescale.plan.found'), letter: undefined, sizes: undefined, analysis: found }];
    return [...standing, ...worked].map((plan) => ({ ...plan, totals: totalsOf(plan.analysis, found) }));
  }, [book, found, locale, piano, plans, result, say]);
  if (columns.every(({ sizes }) => sizes === undefined)) return null;
  return (
    <section className="panel" aria-labelledby="rescale-compare">
      <h2 id="rescale-compare">{say('rescale.compare')}</h2>
      <p className="soft small">{say('rescale.compare.about')}</p>
      <div className="table-wrap">
        <table className="figures-table">
          <thead><tr><th scope="col">{say('rescale.compare.figure')}</th>{columns.map(({ name }) => <th key={name} scope="col">{name}</th>)}</tr></thead>
          <tbody>
            <Rows columns={columns} />
            {plans.length > 0 && (
              <tr>
                <th scope="row">{say('rescale.compare.do')}</th>
                {columns.map(({ name, letter, sizes }) => (
                  <td key={name}>
                    {letter !== undefined && (
                      <div className="rescale-do">
                        {canWrite && <button type="button" className="button" onClick={() => { onPlan(sizes); }}>{say('rescale.compare.plan', { letter })}</button>}
                        <button type="button" className="button button-quiet" onClick={() => { onLetGo(letter); }}>{say('rescale.compare.letGo', { letter })}</button>
                      </div>
                    )}
                  </td>
                ))}
              </tr>
            )}
          </tbody>
        </table>
      </div>
      <PlanPlots plans={columns} />
    </section>
  );
}

function Rows({ columns }: { readonly columns: readonly { readonly name: string; readonly totals: PlanTotals }[] }) {
  const say = useSay();
  const figure = useFigures();
  const { compass } = usePiano();
  const row = (name: string, cell: (totals: PlanTotals) => ReactNode) => (
    <tr><th scope="row">{name}</th>{columns.map((column) => <td key={column.name}>{cell(column.totals)}</td>)}</tr>
  );
  const share = (of: PlanTotals['most']): ReactNode => (of === undefined ? '–' : <>{figure(of.pct, 1, 'pct')} <span className="soft small">{noteNameOf(compass, of.key)}</span></>);
  const bends = (value: number | undefined): string => (value === undefined ? '–' : figure(100 * value, 2, 'pct'));
  return (
    <>
      {row(say('rescale.compare.total'), ({ tensionN, counted, of }) => <>{say('rescale.compare.kN', { value: figure(tensionN / 1000, 2) })}{counted < of && <span className="soft small"> {say('rescale.compare.of', { counted, of })}</span>}</>)}
      {row(say('rescale.compare.most'), ({ most }) => share(most))}
      {row(say('rescale.compare.least'), ({ least }) => share(least))}
      {row(say('rescale.compare.tension'), ({ tensionRoughness }) => bends(tensionRoughness))}
      {row(say('rescale.compare.inharmonicity'), ({ inharmonicityRoughness }) => bends(inharmonicityRoughness))}
      {row(say('rescale.compare.plainSizes'), ({ plainSizes }) => plainSizes)}
      {row(say('rescale.compare.windings'), ({ windings }) => windings)}
      {row(say('rescale.compare.sizeChanges'), ({ sizeChanges }) => sizeChanges)}
      {row(say('rescale.compare.changed'), ({ changed }) => changed)}
    </>
  );
}
