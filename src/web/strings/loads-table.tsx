import { noteNameOf } from '#instrument';
import type { Load, ScaleAnalysis, ScaleBreak, SectionFigures } from '#strings';
import { usePiano } from '../api/piano.tsx';
import { useFigures, useSay } from '../language/use-say.ts';
import { StateMark } from '../leaves/state-mark.tsx';
import type { StateScale } from './state-scale.ts';

/** What the strings pull: section by section and on the plate, states side by side. */
export function LoadsTable({ scales }: { readonly scales: readonly StateScale[] }) {
  const say = useSay();
  const figure = useFigures();
  const { compass } = usePiano();
  const sections = scales[0]?.analysis.sections ?? [];
  const load = ({ tensionN, counted, of }: Load) => (counted === 0 ? <span className="soft">–</span> : <>{say('strings.kilonewtons', { value: figure(tensionN / 1000, 1) })} <span className="soft small figure-doubt">{say('strings.loads.of', { counted, of })}</span></>);
  const range = ({ breaking }: SectionFigures) => breaking !== undefined && (
    <span className="soft small figure-doubt">{say('strings.loads.range', {
      least: figure(breaking.least.pct, 0), leastNote: noteNameOf(compass, breaking.least.key), most: figure(breaking.most.pct, 0), mostNote: noteNameOf(compass, breaking.most.key),
    })}</span>
  );
  return (
    <section className="panel" aria-labelledby="string-loads">
      <h2 id="string-loads">{say('strings.loads')}</h2>
      <div className="table-wrap">
        <table className="figures-table">
          <thead>
            <tr>
              <th scope="col">{say('strings.loads.section')}</th>
              {scales.map(({ state, isTrial }) => <th key={state} scope="col"><StateMark state={state} />{isTrial && <span className="soft small"> {say('strings.trial.with')}</span>}</th>)}
            </tr>
          </thead>
          <tbody>
            {sections.map((section, index) => (
              <tr key={`${section.name} ${String(index)}`}>
                <th scope="row">{section.name} <span className="soft small">{noteNameOf(compass, section.firstKey)}–{noteNameOf(compass, section.lastKey)}</span></th>
                {scales.map(({ state, analysis }) => {
                  const figures = analysis.sections[index];
                  return <td key={state}>{figures === undefined ? '–' : <>{load(figures.load)} {range(figures)}</>}</td>;
                })}
              </tr>
            ))}
            <tr className="split-sum">
              <th scope="row">{say('strings.loads.plate')}</th>
              {scales.map(({ state, analysis }) => <td key={state}><strong>{load(analysis.plate)}</strong></td>)}
            </tr>
          </tbody>
        </table>
      </div>
      {sections.length === 0 && <p className="soft small">{say('strings.loads.noSections')}</p>}
      {scales.map(({ state, analysis }) => <Breaks key={state} state={state} analysis={analysis} />)}
    </section>
  );
}

/** How tension, inharmonicity and impedance jump at the breaks, upper over lower; told, not judged. */
function Breaks({ state, analysis: { breaks, largestStep } }: { readonly state: StateScale['state']; readonly analysis: ScaleAnalysis }) {
  const say = useSay();
  const figure = useFigures();
  const { compass } = usePiano();
  if (breaks.length === 0 && largestStep === undefined) return null;
  const kind = ({ isSection, isWinding }: ScaleBreak) => say(isSection && isWinding ? 'strings.break.both' : isSection ? 'strings.break.section' : 'strings.break.winding');
  return (
    <details className="breaks">
      <summary>{say('strings.breaks')} <StateMark state={state} /></summary>
      <div className="table-wrap">
        <table className="figures-table">
          <thead>
            <tr>
              <th scope="col">{say('strings.break.where')}</th>
              <th scope="col">{say('strings.figure.tension')}</th>
              <th scope="col">B</th>
              <th scope="col">{say('strings.break.impedance')}</th>
            </tr>
          </thead>
          <tbody>
            {breaks.map((one) => (
              <tr key={one.lowerKey}>
                <th scope="row">{noteNameOf(compass, one.lowerKey)}–{noteNameOf(compass, one.upperKey)} <span className="soft small">{kind(one)}</span></th>
                <td>× {figure(one.tensionRatio, 2)}</td>
                <td>× {figure(one.inharmonicityRatio, 2)}</td>
                <td>× {figure(one.unisonImpedanceRatio ?? one.impedanceRatio, 2)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {largestStep !== undefined && <p className="small">{say('strings.largestStep', { lower: noteNameOf(compass, largestStep.lowerKey), upper: noteNameOf(compass, largestStep.upperKey), ratio: figure(largestStep.tensionRatio, 2) })}</p>}
    </details>
  );
}
