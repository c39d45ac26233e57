import { type KeyNumber, noteNameOf } from '#instrument';
import type { HeardNote } from '#workshop';
import type { ReactNode } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { sayMaybe, useFigures, useSay } from '../../language/use-say.ts';
import { StateMark } from '../../leaves/state-mark.tsx';
import type { StateTone } from '../compass/state-tone.ts';

interface NoteTableProps {
  readonly keyNumber: KeyNumber;
  readonly tones: readonly StateTone[];
  readonly computedB: number | undefined;
}

/** The figures of one note, a column a state; what is not given says why. */
export function NoteTable({ keyNumber, tones, computedB }: NoteTableProps) {
  const say = useSay();
  const figure = useFigures();
  const { compass } = usePiano();
  const columns = tones.flatMap(({ state, byKey }) => {
    const heard = byKey.get(keyNumber)?.heard;
    return heard === undefined ? [] : [{ state, heard }];
  });
  const row = (name: string, cell: (heard: HeardNote) => ReactNode) => (
    <tr key={name}><th scope="row">{name}</th>{columns.map(({ state, heard }) => <td key={state}>{cell(heard) ?? <span className="soft">–</span>}</td>)}</tr>
  );
  const refused = ({ decay, descriptors }: HeardNote, name: string): ReactNode => {
    const refusal = [...(decay?.refusals ?? []), ...(descriptors?.refusals ?? [])].find((one) => one.figure === name);
    return refusal === undefined ? null : <span className="soft small">{sayMaybe(say, `tone.refusal.${refusal.reason}`)}</span>;
  };
  const withDoubt = (value: number, doubt: number | undefined, decimals: number, unit?: 's' | 'Hz' | 'ct'): ReactNode =>
    <>{figure(value, decimals, unit)}{doubt !== undefined && <span className="soft small"> ± {figure(2 * doubt, decimals)}</span>}</>;
  return (
    <div className="table-wrap">
      <table className="figures-table">
        <caption className="visually-hidden">{say('tone.note.figures', { note: noteNameOf(compass, keyNumber) })}</caption>
        <thead><tr><th scope="col"><span className="visually-hidden">{say('action.figure')}</span></th>{columns.map(({ state }) => <th key={state} scope="col"><StateMark state={state} /></th>)}</tr></thead>
        <tbody>
          {row(say('tone.figure.pitch'), ({ note }) => note && withDoubt(note.offsetCents, (1200 / Math.LN2) * (note.f0UncertaintyHz / note.f0Hz), 2, 'ct'))}
          {row('f0', ({ note }) => note && withDoubt(note.f0Hz, note.f0UncertaintyHz, 3, 'Hz'))}
          {row(say('tone.figure.inharmonicity'), ({ note }) => note?.inharmonicityB?.toExponential(3))}
          {computedB !== undefined && row(say('tone.design.computed'), () => computedB.toExponential(3))}
          {row(say('tone.note.partials'), ({ note }) => note && `${String(note.fittedPartials.length)} (${say(`tone.law.${note.fitMethod}`)})`)}
          {row(say('tone.note.unison'), ({ note }) => note && figure(note.unisonSpreadCents, 2, 'ct'))}
          {row(say('tone.figure.brightness'), (heard) => (heard.descriptors?.harmonicCentroid === undefined ? refused(heard, 'harmonicCentroid') : withDoubt(heard.descriptors.harmonicCentroid.value, heard.descriptors.harmonicCentroid.uncertainty, 2)))}
          {row(`${say('tone.figure.balance')} (dB)`, (heard) => (heard.descriptors?.balanceDb === undefined ? refused(heard, 'balanceDb') : withDoubt(heard.descriptors.balanceDb.value, heard.descriptors.balanceDb.uncertainty, 1)))}
          {row(`${say('tone.figure.level')} (dB)`, ({ levelDb }) => levelDb !== undefined && figure(levelDb, 1))}
          {row(say('tone.figure.sustain'), (heard) => (heard.decay?.edt10 === undefined ? refused(heard, 'edt10') : withDoubt(heard.decay.edt10.seconds, heard.decay.edt10.uncertaintyS, 2, 's')))}
          {row(say('tone.note.t20'), (heard) => (heard.decay?.t20 === undefined ? refused(heard, 't20') : withDoubt(heard.decay.t20.seconds, heard.decay.t20.uncertaintyS, 2, 's')))}
          {row(say('tone.note.doubts'), ({ note }) => note && note.quality.warnings.length > 0 && <span className="small">{note.quality.warnings.map((warning) => say(`tone.warning.${warning}`)).join(' ')}</span>)}
        </tbody>
      </table>
    </div>
  );
}
