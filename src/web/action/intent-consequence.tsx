import type { TouchAnalysis } from '#action';
import type { TouchIntent } from '#instrument';
import { usePiano } from '../api/piano.tsx';
import { useFigures, useSay } from '../language/use-say.ts';
import { consequencesOf } from './consequence.ts';

/** What up weight would follow from the choice, with the friction as it was measured. */
export function IntentConsequence({ intent, analysis }: { readonly intent: TouchIntent; readonly analysis: TouchAnalysis }) {
  const say = useSay();
  const figure = useFigures();
  const { compass } = usePiano();
  const rows = consequencesOf(intent, analysis, compass);
  if (rows.length === 0) return null;
  return (
    <div className="table-wrap">
      <table className="figures-table">
        <caption>{say('action.consequence.title')}</caption>
        <thead>
          <tr>
            <th scope="col">{say('action.consequence.register')}</th>
            <th scope="col">{say('action.figure.friction')}</th>
            <th scope="col">{say('action.figure.downWeight')}</th>
            <th scope="col">{say('action.figure.upWeight')}</th>
            <th scope="col"><span className="visually-hidden">{say('action.consequence.remark')}</span></th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ register, frictionG, downWeightG, upWeightG }) => (
            <tr key={register}>
              <th scope="row">{say(`register.${register}`)}</th>
              <td>{figure(frictionG, 1, 'g')}</td>
              <td>{figure(downWeightG, 1, 'g')}</td>
              <td>{figure(upWeightG, 1, 'g')}</td>
              <td>{upWeightG < intent.upWeightMinG ? say('action.consequence.low', { least: figure(intent.upWeightMinG, 0, 'g') }) : ''}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
