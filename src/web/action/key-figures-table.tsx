import type { KeyTouch } from '#action';
import { type QuantityName, noteNameOf, quantitiesOf, quantityOf } from '#instrument';
import type { ReactNode } from 'react';
import { usePiano } from '../api/piano.tsx';
import { useReadingBook } from '../api/use-readings.ts';
import { Figure } from '../figure/figure.tsx';
import { useFigures, useSay } from '../language/use-say.ts';
import { StateMark } from '../leaves/state-mark.tsx';
import { type Behind, touchWeightStory, weightRatioStory } from './stories.ts';
import type { StateAnalysis } from './state-analysis.ts';

const keyQuantities = quantitiesOf('touch', 'key');

interface Column {
  readonly state: StateAnalysis['state'];
  readonly touch: KeyTouch;
  readonly behind: Behind;
}

/** Every figure of one key, one column a state; the derived ones open. */
export function KeyFiguresTable({ keyNumber, analyses }: { readonly keyNumber: number; readonly analyses: readonly StateAnalysis[] }) {
  const say = useSay();
  const figure = useFigures();
  const { compass } = usePiano();
  const book = useReadingBook();
  const columns = analyses.flatMap(({ state, analysis }): readonly Column[] => {
    const touch = analysis.keys.find(({ key }) => key === keyNumber);
    return touch === undefined ? [] : [{ state, touch, behind: { touch, readings: [...book[state].values()] } }];
  });
  const title = (what: string): string => `${what}, ${noteNameOf(compass, keyNumber)}`;
  const row = (name: string, cells: readonly ReactNode[]) =>
    cells.some((cell) => cell !== null) && (
      <tr key={name}>
        <th scope="row">{name}</th>
        {cells.map((cell, index) => <td key={columns[index]?.state}>{cell ?? <span className="soft">–</span>}</td>)}
      </tr>
    );
  const quantityRow = (quantity: QuantityName) =>
    row(say(`quantity.${quantity}.name`), columns.map(({ touch }) => {
      const measured = touch.figures[quantity as keyof typeof touch.figures];
      return typeof measured === 'object' ? figure(measured.value, quantityOf(quantity).decimals, 'g') : null;
    }));
  const derivedRow = (name: string, output: string, pick: (touch: KeyTouch) => number | undefined, doubt = true) =>
    row(name, columns.map(({ touch, behind }) => {
      const value = pick(touch);
      if (value === undefined) return null;
      return (
        <>
          <Figure value={value} decimals={1} unit="g" story={() => touchWeightStory(title(name), output, behind)} />
          {doubt && touch.standardUncertaintyG !== undefined && <span className="soft figure-doubt"> ± {figure(2 * touch.standardUncertaintyG, 1)}</span>}
        </>
      );
    }));
  return (
    <div className="table-wrap">
      <table className="figures-table">
        <thead>
          <tr>
            <th scope="col"><span className="visually-hidden">{say('action.figure')}</span></th>
            {columns.map(({ state }) => <th key={state} scope="col"><StateMark state={state} /></th>)}
          </tr>
        </thead>
        <tbody>
          {keyQuantities.slice(0, 2).map(quantityRow)}
          {derivedRow(say('touch.balanceWeight'), 'balanceWeightG', ({ balanceWeightG }) => balanceWeightG)}
          {derivedRow(say('touch.friction'), 'frictionG', ({ frictionG }) => frictionG)}
          {derivedRow(say('touch.correctedFriction'), 'correctedFrictionG', ({ correctedFrictionG }) => correctedFrictionG, false)}
          {keyQuantities.slice(2).map(quantityRow)}
          {row(say('touch.weightRatio'), columns.map(({ touch, behind }) => (touch.weightRatio === undefined ? null : <Figure key="ratio" value={touch.weightRatio} decimals={2} story={() => weightRatioStory(title(say('touch.weightRatio')), behind)} />)))}
        </tbody>
      </table>
    </div>
  );
}
