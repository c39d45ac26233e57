import { type AnalysedBearing, type BearingFinding, bearingAsRead } from '#belly';
import type { KeyNumber, State } from '#instrument';
import { usePiano } from '../api/piano.tsx';
import { useFigures, useSay } from '../language/use-say.ts';
import { Note } from '../ui/note.tsx';
import { BearingTable } from './bearing-table.tsx';
import type { StateBelly } from './state-belly.ts';
import { KeyPanelFrame } from '../keys/key-panel-frame.tsx';

interface BearingPanelProps {
  readonly keyNumber: KeyNumber;
  readonly bellies: readonly StateBelly[];
  readonly state: State;
  readonly onKey: (key: KeyNumber) => void;
}

/** One note: what is found of its bearing, and its figures in every state. */
export function BearingPanel({ keyNumber, bellies, state, onKey }: BearingPanelProps) {
  const note = bellies.find((one) => one.state === state)?.analysis.notes.find(({ key }) => key === keyNumber);
  return (
    <KeyPanelFrame keyNumber={keyNumber} onKey={onKey} className="note-panel">
      {note !== undefined && <Standing note={note} />}
      <BearingTable keyNumber={keyNumber} bellies={bellies} />
      {note !== undefined && note.also.length > 0 && <Also note={note} />}
    </KeyPanelFrame>
  );
}

/** What is found of a note, or that nothing is. */
function Standing({ note: { figures, findings } }: { readonly note: AnalysedBearing }) {
  const say = useSay();
  const { scale } = usePiano();
  if (figures === undefined) return <p className="soft">{say('belly.missing')}</p>;
  if (findings.length > 0) return findings.map((finding) => <Found key={`${finding.code} ${finding.side}`} finding={finding} />);
  if (scale?.bearingTargetDeg == null || scale.bearingToleranceDeg == null) return <p className="soft">{say('belly.notAsked')}</p>;
  return figures.totalDeg === undefined ? <p className="soft">{say('belly.noTotal')}</p> : <p><strong>{say('belly.within')}</strong></p>;
}

function Found({ finding: { code, side, figureDeg, limitDeg, uncertaintyDeg, inDoubt } }: { readonly finding: BearingFinding }) {
  const say = useSay();
  const figure = useFigures();
  const degrees = (value: number): string => figure(value, 2, 'deg');
  return (
    <Note tone={inDoubt === true || code === 'bearingUneven' ? 'warn' : 'bad'}>
      <p><strong><span aria-hidden="true">{inDoubt === true ? '▲' : '✕'} </span>{say(`belly.finding.${code}`)}</strong> · {say(`belly.finding.${code}.evidence`, { figure: degrees(figureDeg), limit: degrees(limitDeg), side })}</p>
      {inDoubt === true && uncertaintyDeg !== undefined && <p>{say('belly.finding.inDoubt', { uncertainty: degrees(uncertaintyDeg) })}</p>}
      <p className="small">{say(`belly.finding.${code}.why`)}</p>
    </Note>
  );
}

/** What other ways of reading gave, beside the one gone by: where they disagree, one of them is wrong. */
function Also({ note: { also, pull } }: { readonly note: AnalysedBearing }) {
  const say = useSay();
  const figure = useFigures();
  return (
    <ul className="assumed small">
      {also.map((read) => {
        const { totalDeg } = bearingAsRead(read, pull);
        return <li key={read.source}>{say('belly.also', { source: say(`belly.source.${read.source}`), total: totalDeg === undefined ? '–' : figure(totalDeg, 2, 'deg') })}</li>;
      })}
    </ul>
  );
}
