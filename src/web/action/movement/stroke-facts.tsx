import type { KeyStroke, StrokeMeasures } from '#action';
import { Figure } from '../../figure/figure.tsx';
import type { FigureStory } from '../../figure/figure-store.ts';
import { useFigures, useSay } from '../../language/use-say.ts';

interface StrokeFactsProps {
  readonly stroke: KeyStroke;
  readonly measures: StrokeMeasures;
  readonly dropMm: number | undefined;
}

/** What the stroke says in words: let-off, aftertouch, drop, and how far the ratio departs from that of the levers. */
export function StrokeFacts({ stroke, measures, dropMm }: StrokeFactsProps) {
  const say = useSay();
  const figure = useFigures();
  const { letOff, aftertouchMm, levers, measured, meanRatio, meanDeparturePct, positions, spreadMm } = stroke;
  const ratios = positions.flatMap(({ rates, departurePct, phase }) => (rates === undefined || departurePct === undefined || phase !== 'driven' ? [] : [{ ratio: rates.actionRatio, departurePct }])).toSorted((a, b) => a.ratio - b.ratio);
  const [least, most] = [ratios[0], ratios.at(-1)];
  const percent = (value: number): string => figure(value, 1, 'pct', true);
  const story = (title: string, output: string) => (): FigureStory => ({ title, output, operation: 'action-stroke', input: { ...measures, positions: positions.length } });
  const mm = (value: number, decimals = 1): string => figure(value, decimals, 'mm');
  return (
    <>
      <h3>{say('movement.facts')}</h3>
      <ul className="assumed">
        <li>{say('movement.fact.letOff', { travel: mm(letOff.edgeTravelMm, 2), below: mm(letOff.hammerToStringMm) })}</li>
        <li>{aftertouchMm >= 0 ? say('movement.fact.aftertouch') : say('movement.fact.lands', { short: mm(0 - aftertouchMm, 2) })} <Figure value={aftertouchMm} decimals={2} unit="mm" story={story(say('quantity.aftertouchMm.name'), 'aftertouchMm')} /></li>
        {dropMm !== undefined && <li>{say('movement.fact.drop', { drop: mm(dropMm), below: mm(measures.letOffMm + dropMm) })}</li>}
        {measured.rates !== undefined && measured.departurePct !== undefined && <li>{say('movement.fact.levers', { ratio: figure(levers.actionRatio, 3), here: figure(measured.rates.actionRatio, 3), departure: percent(measured.departurePct) })}</li>}
        <li>{say('movement.fact.mean', { mean: figure(meanRatio, 3), departure: percent(meanDeparturePct) })}</li>
        {least !== undefined && most !== undefined && <li>{say('movement.fact.range', { least: figure(least.ratio, 2), most: figure(most.ratio, 2), low: percent(least.departurePct), high: percent(most.departurePct) })}</li>}
        <li>{say('movement.fact.spread', { spread: mm(spreadMm) })}</li>
      </ul>
    </>
  );
}
