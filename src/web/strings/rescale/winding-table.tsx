import type { WoundDesign } from '#strings';
import { useFigures, useSay } from '../../language/use-say.ts';
import { decimalsOfB } from '../../language/decimals-of-b.ts';
import { decimalsFor } from '../../story/say-event.ts';

interface WindingTableProps {
  readonly designs: readonly WoundDesign[];
  readonly chosen: WoundDesign | undefined;
  readonly onChoose: (design: WoundDesign) => void;
}

/** Windings by how near they come, each with what it bears and sounds like. */
export function WindingTable({ designs, chosen, onChoose }: WindingTableProps) {
  const say = useSay();
  const figure = useFigures();
  const size = (mm: number): string => figure(mm, decimalsFor(mm, 2));
  return (
    <div className="table-wrap">
      <table className="figures-table" aria-label={say('windingDesign.title')}>
        <thead>
          <tr>
            <th scope="col">{say('windingDesign.core.head')}</th>
            <th scope="col">{say('windingDesign.wraps.head')}</th>
            <th scope="col">{say('windingDesign.over')}</th>
            <th scope="col">{say('strings.figure.tension')}</th>
            <th scope="col">{say('windingDesign.off')}</th>
            <th scope="col">{say('strings.figure.breaking')}</th>
            <th scope="col">B</th>
            <th scope="col">{say('windingDesign.choose')}</th>
          </tr>
        </thead>
        <tbody>
          {designs.map((design) => {
            const { coreDiameterMm, wraps, figures, errorPct } = design;
            const laid = wraps.map(({ wireDiameterMm }) => size(wireDiameterMm)).join(' + ');
            return (
              <tr key={`${String(coreDiameterMm)} ${laid}`}>
                <th scope="row">{size(coreDiameterMm)}</th>
                <td>{laid}</td>
                <td>{figure(figures.overallDiameterMm, 2)}</td>
                <td>{figure(figures.tensionN, 0, 'N')}</td>
                <td>{figure(errorPct, 2, 'pct', true)}</td>
                <td>{figure(figures.breakingPct, 1, 'pct')}</td>
                <td>{figure(figures.inharmonicityB, decimalsOfB(figures.inharmonicityB))}</td>
                <td><button type="button" className="button" aria-pressed={design === chosen} aria-label={say('windingDesign.chooseThis', { core: size(coreDiameterMm), wraps: laid })} onClick={() => { onChoose(design); }}>{say('windingDesign.choose')}</button></td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
}
