import type { KeyTouch, TouchAnalysis } from '#action';
import type { State } from '#instrument';
import { useReadings } from '../api/use-readings.ts';
import { Figure } from '../figure/figure.tsx';
import { useSay } from '../language/use-say.ts';
import { StateMark } from '../leaves/state-mark.tsx';
import { EvennessFigures } from './evenness-figures.tsx';
import { leverRatioStory, sectionRatioStory } from './stories.ts';

interface KeyboardFiguresProps {
  readonly state: State;
  readonly analysis: TouchAnalysis;
}

/** The whole keyboard of one state in figures: how even it is, and its ratio, by weights and by distance each for itself. */
export function KeyboardFigures({ state, analysis }: KeyboardFiguresProps) {
  const say = useSay();
  return (
    <section className="panel" aria-labelledby="keyboard-figures">
      <h2 id="keyboard-figures" className="row row-between">
        {say('action.whole')} <StateMark state={state} />
      </h2>
      <EvennessFigures state={state} analysis={analysis} />
      {analysis.partial ? null : <Ratios state={state} analysis={analysis} />}
    </section>
  );
}

const colours = ['natural', 'sharp'] as const;

/** Ratio by weights and ratio by distance, naturals and sharps apart: two figures of two kinds, never one made of both. */
function Ratios({ state, analysis }: KeyboardFiguresProps) {
  const say = useSay();
  const readings = useReadings(state);
  const none = <span className="soft">{say('action.ratio.unknown')}</span>;
  const byWeights = (colour: KeyTouch['colour']) => {
    const { value, notes } = analysis.weightRatio[colour];
    if (value === undefined) return none;
    const title = `${say('touch.weightRatio')}, ${say(`action.colour.${colour}`)}`;
    return (
      <>
        <Figure value={value} decimals={2} story={() => sectionRatioStory(title, analysis, colour, [...readings.values()])} /> <span className="soft small">{say('action.ratio.notes', { count: notes })}</span>
      </>
    );
  };
  const byDistance = (colour: KeyTouch['colour']) => {
    const value = analysis.leverRatio[colour];
    const title = `${say('touch.leverRatio')}, ${say(`action.colour.${colour}`)}`;
    return value === undefined ? none : <Figure value={value} decimals={2} story={() => leverRatioStory(title, colour, [...readings.values()])} />;
  };
  return (
    <div className="table-wrap">
      <table className="figures-table">
        <caption>{say('action.ratio')}</caption>
        <thead>
          <tr>
            <th scope="col"><span className="visually-hidden">{say('action.ratio.kind')}</span></th>
            {colours.map((colour) => <th key={colour} scope="col">{say(`action.colour.${colour}`)}</th>)}
          </tr>
        </thead>
        <tbody>
          <tr>
            <th scope="row">{say('touch.weightRatio')}</th>
            {colours.map((colour) => <td key={colour}>{byWeights(colour)}</td>)}
          </tr>
          <tr>
            <th scope="row">{say('touch.leverRatio')}</th>
            {colours.map((colour) => <td key={colour}>{byDistance(colour)}</td>)}
          </tr>
        </tbody>
      </table>
      <p className="soft small">{say('action.ratio.apart')}</p>
    </div>
  );
}
