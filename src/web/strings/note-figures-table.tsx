import { type KeyNumber, type QuantityName, noteNameOf, quantityOf } from '#instrument';
import type { AnalysedNote, StringUncertainty } from '#strings';
import type { UnitId } from '#units';
import type { ReactNode } from 'react';
import { usePiano } from '../api/piano.tsx';
import { Figure } from '../figure/figure.tsx';
import { useFigures, useSay } from '../language/use-say.ts';
import { StateMark } from '../leaves/state-mark.tsx';
import { decimalsFor } from '../story/say-event.ts';
import { decimalsOfB } from '../language/decimals-of-b.ts';
import type { StateScale } from './state-scale.ts';
import { stringStory } from './stories.ts';
import { standingSizes, trialFields } from './trial.ts';

interface Column {
  readonly scale: StateScale;
  readonly note: AnalysedNote;
}

interface Derived {
  readonly name: string;
  /** The field of the operation. */
  readonly output: string;
  readonly decimals: number;
  readonly unit?: UnitId;
  readonly sign?: string;
  readonly pick: (figures: NonNullable<AnalysedNote['figures']>) => number;
  readonly doubt?: (uncertainty: StringUncertainty) => number;
}

const derived = [
  { name: 'tension', output: 'tensionN', decimals: 0, unit: 'N', pick: ({ tensionN }) => tensionN, doubt: ({ tensionUncertaintyN }) => tensionUncertaintyN },
  { name: 'breaking', output: 'breakingPct', decimals: 1, unit: 'pct', pick: ({ breakingPct }) => breakingPct, doubt: ({ breakingUncertaintyPct }) => breakingUncertaintyPct },
  { name: 'stress', output: 'stressMPa', decimals: 0, sign: 'MPa', pick: ({ stressMPa }) => stressMPa },
  { name: 'inharmonicity', output: 'inharmonicityB', decimals: 6, pick: ({ inharmonicityB }) => inharmonicityB, doubt: ({ inharmonicityUncertainty }) => inharmonicityUncertainty },
  { name: 'impedance', output: 'impedanceKgPerS', decimals: 2, sign: 'kg/s', pick: ({ impedanceKgPerS }) => impedanceKgPerS, doubt: ({ impedanceUncertaintyKgPerS }) => impedanceUncertaintyKgPerS },
] as const satisfies readonly Derived[];

/** Every figure of one note, one column a state: its sizes, then what follows, each opening to how it was made. */
export function NoteFiguresTable({ keyNumber, scales }: { readonly keyNumber: KeyNumber; readonly scales: readonly StateScale[] }) {
  const say = useSay();
  const figure = useFigures();
  const { compass, scale: terms } = usePiano();
  const columns = scales.flatMap((scale): readonly Column[] => {
    const note = scale.analysis.notes.find(({ key }) => key === keyNumber);
    return note === undefined ? [] : [{ scale, note }];
  });
  const row = (name: string, cell: (column: Column) => ReactNode) => {
    const cells = columns.map((column) => ({ state: column.scale.state, shown: cell(column) }));
    return cells.some(({ shown }) => shown !== null) && (
      <tr key={name}>
        <th scope="row">{name}</th>
        {cells.map(({ state, shown }) => <td key={state}>{shown ?? <span className="soft">–</span>}</td>)}
      </tr>
    );
  };
  const sizeRow = (quantity: QuantityName) => row(say(`quantity.${quantity}.name`), ({ note }) => {
    const value = standingSizes(note)[quantity];
    if (value === undefined) return null;
    const { unit, decimals } = quantityOf(quantity);
    const isEstimate = quantity === 'speakingLengthMm' && note.isLengthEstimated;
    return <>{isEstimate && '≈ '}{figure(value, isEstimate ? decimals : decimalsFor(value, decimals), unit)}{isEstimate && <span className="soft figure-doubt"> {say('strings.estimated')}</span>}</>;
  });
  const derivedRow = ({ name, output, decimals, unit, sign, pick, doubt }: Derived) => row(say(`strings.figure.${name as 'tension'}`), ({ note, scale }) => {
    if (note.figures === undefined) return null;
    const value = pick(note.figures);
    const story = (): NonNullable<ReturnType<typeof stringStory>> => {
      const told = stringStory(say(`strings.figure.${name as 'tension'}`), output, { note, state: scale.state, terms, readings: scale.readings, compass });
      if (told === undefined) throw new Error('a figure without sizes');
      return told;
    };
    const standard = note.figures.uncertainty === undefined ? undefined : doubt?.(note.figures.uncertainty);
    return (
      <>
        <Figure value={value} decimals={name === 'inharmonicity' ? decimalsOfB(value) : decimals} {...(unit === undefined ? {} : { unit })} story={story} />{sign !== undefined && ` ${sign}`}
        {doubt !== undefined && <span className="soft figure-doubt"> {standard === undefined ? say('strings.doubt.unknown') : `± ${figure(2 * standard, name === 'inharmonicity' ? decimalsOfB(value) : name === 'tension' ? 0 : decimals)}`}</span>}
      </>
    );
  });
  return (
    <div className="table-wrap">
      <table className="figures-table">
        <caption className="visually-hidden">{say('strings.note.figures', { note: noteNameOf(compass, keyNumber) })}</caption>
        <thead>
          <tr>
            <th scope="col"><span className="visually-hidden">{say('action.figure')}</span></th>
            {columns.map(({ scale: { state, isTrial } }) => <th key={state} scope="col"><StateMark state={state} />{isTrial && <span className="soft small"> {say('strings.trial.with')}</span>}</th>)}
          </tr>
        </thead>
        <tbody>
          {row(say('strings.frequency'), ({ note }) => figure(note.frequencyHz, 2, 'Hz'))}
          {trialFields.map(sizeRow)}
          {row(say('strings.overall'), ({ note }) => (note.wire?.kind === 'wound' && 'wraps' in note.wire && note.figures !== undefined ? figure(note.figures.overallDiameterMm, 2, 'mm') : null))}
          {derived.map(derivedRow)}
          {row(say('strings.unison'), ({ note }) => (note.unisonTensionN === undefined ? null : figure(note.unisonTensionN, 0, 'N')))}
        </tbody>
      </table>
      {columns.some(({ note }) => note.figures?.uncertainty !== undefined) && <p className="soft small">{say('strings.doubt')}</p>}
    </div>
  );
}
