import type { AnalysedBearing, BearingFigures, BearingRead } from '#belly';
import { type KeyNumber, type QuantityName, noteNameOf, quantityOf } from '#instrument';
import type { ReactNode } from 'react';
import { usePiano } from '../api/piano.tsx';
import { Figure } from '../figure/figure.tsx';
import { useFigures, useSay } from '../language/use-say.ts';
import { StateMark } from '../leaves/state-mark.tsx';
import { decimalsFor } from '../story/say-event.ts';
import { type BearingOutput, bearingStory } from './bearing-stories.ts';
import type { StateBelly } from './state-belly.ts';

interface Column {
  readonly belly: StateBelly;
  readonly note: AnalysedBearing;
}

const derived = [
  { figure: 'front', output: 'frontDeg', unit: 'deg', decimals: 2, doubt: ({ frontUncertaintyDeg }: BearingFigures) => frontUncertaintyDeg },
  { figure: 'rear', output: 'rearDeg', unit: 'deg', decimals: 2, doubt: ({ rearUncertaintyDeg }: BearingFigures) => rearUncertaintyDeg },
  { figure: 'total', output: 'totalDeg', unit: 'deg', decimals: 2, doubt: ({ totalUncertaintyDeg }: BearingFigures) => totalUncertaintyDeg },
  { figure: 'force', output: 'forceN', unit: 'N', decimals: 1, doubt: ({ forceUncertaintyN }: BearingFigures) => forceUncertaintyN },
] as const;

const sizes: Readonly<Record<BearingRead['source'], readonly QuantityName[]>> = {
  heights: ['frontHeightMm', 'bridgeHeightMm', 'rearHeightMm', 'speakingLengthMm', 'backLengthMm'],
  angles: ['frontBearingDeg', 'rearBearingDeg'],
  gauge: ['bearingGaugeMm'],
};
const inputs: readonly QuantityName[] = [...sizes.heights, ...sizes.angles, ...sizes.gauge];

/** What a reading holds, by the quantity each figure is noted as. */
function figuresOf(read: BearingRead): Readonly<Partial<Record<QuantityName, number | undefined>>> {
  switch (read.source) {
    case 'heights': return read;
    case 'angles': return { frontBearingDeg: read.frontDeg, rearBearingDeg: read.rearDeg };
    case 'gauge': return { bearingGaugeMm: read.readingMm };
  }
}

/** Every figure of the bearing of one note, one column a state: what was read, then what follows, each opening to how it was made. */
export function BearingTable({ keyNumber, bellies }: { readonly keyNumber: KeyNumber; readonly bellies: readonly StateBelly[] }) {
  const say = useSay();
  const figure = useFigures();
  const { compass } = usePiano();
  const columns = bellies.flatMap((belly): readonly Column[] => {
    const note = belly.analysis.notes.find(({ key }) => key === keyNumber);
    return note === undefined ? [] : [{ belly, note }];
  });
  const row = (name: string, cell: (column: Column) => ReactNode) => {
    const cells = columns.map((column) => ({ state: column.belly.state, shown: cell(column) }));
    return cells.some(({ shown }) => shown !== null) && (
      <tr key={name}>
        <th scope="row">{name}</th>
        {cells.map(({ state, shown }) => <td key={state}>{shown ?? <span className="soft">–</span>}</td>)}
      </tr>
    );
  };
  const sizeRow = (quantity: QuantityName) => row(say(`quantity.${quantity}.name`), ({ note, belly }) => {
    const value = note.read === undefined ? undefined : figuresOf(note.read)[quantity];
    if (value === undefined) return null;
    const { unit, decimals } = quantityOf(quantity);
    const isLaid = quantity === 'speakingLengthMm' && belly.gathered.assumed.some(({ what, notes }) => what === 'lengthEstimated' && notes.includes(keyNumber));
    const isEstimated = isLaid || (note.read?.source === 'heights' && note.read.isEstimated);
    return <>{isLaid && '≈ '}{figure(value, isEstimated ? decimals : decimalsFor(value, decimals), unit)}</>;
  });
  const derivedRow = ({ figure: name, output, unit, decimals, doubt }: (typeof derived)[number]) => row(say(`belly.figure.${name}`), ({ note, belly }) => {
    const value = note.figures?.[output];
    if (value === undefined || note.figures === undefined) return null;
    const standard = doubt(note.figures);
    const title = say(`belly.figure.${name}`);
    const story = () => bearingStory(title, output satisfies BearingOutput, { note, state: belly.state, readings: belly.readings, compass });
    return (
      <>
        {story() === undefined ? figure(value, decimals, unit) : <Figure value={value} decimals={decimals} unit={unit} story={() => story() ?? { title, operation: 'bearing', input: {} }} />}
        <span className="soft figure-doubt"> {standard === undefined ? say('belly.doubt.unknown') : `± ${figure(2 * standard, decimals)}`}</span>
      </>
    );
  });
  return (
    <div className="table-wrap">
      <table className="figures-table">
        <caption className="visually-hidden">{say('belly.note.figures', { note: noteNameOf(compass, keyNumber) })}</caption>
        <thead>
          <tr>
            <th scope="col"><span className="visually-hidden">{say('action.figure')}</span></th>
            {columns.map(({ belly: { state } }) => <th key={state} scope="col"><StateMark state={state} /></th>)}
          </tr>
        </thead>
        <tbody>
          {row(say('belly.source'), ({ note: { read } }) => (read === undefined ? null : <>{say(`belly.source.${read.source}`)}{read.source === 'heights' && read.isEstimated && <span className="soft"> {say('strings.estimated')}</span>}</>))}
          {inputs.map(sizeRow)}
          {row(say('belly.pull'), ({ note: { pull } }) => (pull === undefined ? null : <>{pull.strings} × {figure(pull.tensionN, 0, 'N')}</>))}
          {derived.map(derivedRow)}
        </tbody>
      </table>
      {columns.some(({ note }) => note.figures?.totalUncertaintyDeg !== undefined) && <p className="soft small">{say('belly.doubt')}</p>}
    </div>
  );
}
