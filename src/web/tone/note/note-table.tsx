import { type KeyNumber, noteNameOf } from '#instrument';
import type { HeardNote, StateTone } from '#workshop';
import type { ReactNode } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { sayMaybe, useFigures, useSay } from '../../language/use-say.ts';
import { StateMark } from '../../leaves/state-mark.tsx';

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
  const refused = (note: HeardNote['note'], name: string): ReactNode => {
    const refusal = note?.refusals.find((one) => one.figure === name);
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
          {row(say('tone.figure.brightness'), ({ note }) => (note?.descriptors?.harmonicCentroid === undefined ? refused(note, 'harmonicCentroid') : withDoubt(note.descriptors.harmonicCentroid, note.descriptors.harmonicCentroidUncertainty, 2)))}
          {row(`${say('tone.figure.balance')} (dB)`, ({ note }) => (note?.descriptors?.balanceDb === undefined ? refused(note, 'balanceDb') : withDoubt(note.descriptors.balanceDb, note.descriptors.balanceUncertaintyDb, 1)))}
          {row(`${say('tone.figure.level')} (dB)`, ({ note }) => note && figure(note.loudnessDb, 1))}
          {row(say('tone.figure.sustain'), ({ note }) => (note?.decay?.edt10S === undefined ? refused(note, 'edt10') : withDoubt(note.decay.edt10S, note.decay.edt10UncertaintyS, 2, 's')))}
          {row(say('tone.note.t20'), ({ note }) => (note?.decay?.t20S === undefined ? refused(note, 't20') : withDoubt(note.decay.t20S, note.decay.t20UncertaintyS, 2, 's')))}
          {row(say('tone.note.doubts'), ({ note }) => note && note.quality.warnings.length > 0 && <span className="small">{note.quality.warnings.map((warning) => say(`tone.warning.${warning}`)).join(' ')}</span>)}
        </tbody>
      </table>
    </div>
  );
}
