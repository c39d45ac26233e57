import type { AnalysedUpright, UprightFinding } from '#action';
import { type KeyNumber, noteNameOf } from '#instrument';
import type { UnitId } from '#units';
import { usePiano } from '../../api/piano.tsx';
import { Figure } from '../../figure/figure.tsx';
import { KeyPanelFrame } from '../../keys/key-panel-frame.tsx';
import { useFigures, useSay } from '../../language/use-say.ts';
import { StateMark } from '../../leaves/state-mark.tsx';
import { Note } from '../../ui/note.tsx';
import type { StateUpright } from './state-upright.ts';
import { UprightPlanLines } from './upright-plan.tsx';
import { type UprightOutput, uprightStory } from './upright-stories.ts';

interface UprightPanelProps {
  readonly keyNumber: KeyNumber;
  readonly uprights: readonly StateUpright[];
  readonly shown: StateUpright;
  readonly onKey: (key: KeyNumber) => void;
}

/** One key of an upright: what is found, what to do, its figures in every state, and its plan. */
export function UprightPanel({ keyNumber, uprights, shown, onKey }: UprightPanelProps) {
  const say = useSay();
  const key = shown.keys[keyNumber - 1];
  return (
    <KeyPanelFrame keyNumber={keyNumber} onKey={onKey}>
      {key !== undefined && <UprightFindings analysed={key} />}
      <UprightTable keyNumber={keyNumber} uprights={uprights} />
      {key !== undefined && (
        <>
          <h3>{say('upright.plan')}</h3>
          <UprightPlanLines analysed={key} upWeightMinG={shown.gathered.input.upWeightMinG} />
        </>
      )}
    </KeyPanelFrame>
  );
}

function UprightFindings({ analysed: { findings, read } }: { readonly analysed: AnalysedUpright }) {
  const say = useSay();
  if (findings.length > 0) {
    return (
      <>
        {findings.map((finding) => <Found key={finding.code} finding={finding} />)}
        <h3>{say('upright.do')}</h3>
        <ol className="turns">{findings.map(({ code }) => <li key={code}>{say(`upright.do.${code}`)}</li>)}</ol>
        <p className="soft small">{say('upright.practice')}</p>
      </>
    );
  }
  return read.springTorqueGMm === undefined && read.damperG === undefined ? <p className="soft">{say('upright.key.nothing')}</p> : <p><strong>{say('upright.within')}</strong></p>;
}

const OF_TORQUE: ReadonlySet<UprightFinding['code']> = new Set(['noReturn', 'springWeak', 'springStrong']);

function Found({ finding: { code, figure: value, limit, byG } }: { readonly finding: UprightFinding }) {
  const say = useSay();
  const figure = useFigures();
  const inUnit = (amount: number): string => (OF_TORQUE.has(code) ? figure(amount, 0, 'gmm') : figure(amount, 1, 'g'));
  const isGrave = code === 'noReturn';
  return (
    <Note tone={isGrave ? 'bad' : 'warn'}>
      <p><strong><span aria-hidden="true">{isGrave ? '✕' : '▲'} </span>{say(`upright.finding.${code}`)}</strong> · {say(`upright.finding.${code}.evidence`, { figure: inUnit(value), limit: inUnit(limit), by: figure(Math.abs(byG), 1, 'g') })}</p>
    </Note>
  );
}

interface Row {
  readonly name: 'spring' | 'springShare' | 'hammerShare' | 'wippenShare' | 'damper' | 'damperShare' | 'byParts' | 'balance' | 'friction' | 'withDamper' | 'return' | 'ratio';
  readonly unit?: UnitId;
  readonly decimals: number;
  readonly of: (key: AnalysedUpright) => number | undefined;
  /** The field of the operation that is told when the figure is opened. */
  readonly output?: UprightOutput;
}

const ROWS: readonly Row[] = [
  { name: 'spring', unit: 'gmm', decimals: 0, of: ({ read }) => read.springTorqueGMm },
  { name: 'springShare', unit: 'g', decimals: 1, of: ({ springShareG }) => springShareG, output: 'springG' },
  { name: 'hammerShare', unit: 'g', decimals: 1, of: ({ byParts }) => byParts?.hammerG, output: 'hammerG' },
  { name: 'wippenShare', unit: 'g', decimals: 1, of: ({ byParts }) => byParts?.wippenG, output: 'wippenG' },
  { name: 'byParts', unit: 'g', decimals: 1, of: ({ byParts }) => byParts?.balanceWeightG, output: 'balanceWeightG' },
  { name: 'balance', unit: 'g', decimals: 1, of: ({ balanceWeightG }) => balanceWeightG },
  { name: 'friction', unit: 'g', decimals: 1, of: ({ frictionG }) => frictionG },
  { name: 'damper', unit: 'g', decimals: 1, of: ({ read }) => read.damperG },
  { name: 'damperShare', unit: 'g', decimals: 1, of: ({ damperShareG }) => damperShareG, output: 'damperShareG' },
  { name: 'withDamper', unit: 'g', decimals: 1, of: ({ downWithDamperG }) => downWithDamperG },
  { name: 'return', unit: 'gmm', decimals: 0, of: ({ returnTorqueGMm }) => returnTorqueGMm },
  { name: 'ratio', decimals: 2, of: ({ byParts }) => byParts?.actionRatio, output: 'actionRatio' },
];

function UprightTable({ keyNumber, uprights }: Pick<UprightPanelProps, 'keyNumber' | 'uprights'>) {
  const say = useSay();
  const figure = useFigures();
  const { compass } = usePiano();
  const columns = uprights.flatMap((upright) => (upright.keys[keyNumber - 1] === undefined ? [] : [{ upright, key: upright.keys[keyNumber - 1] as AnalysedUpright }]));
  return (
    <div className="table-wrap">
      <table className="figures-table">
        <caption className="visually-hidden">{say('upright.key.figures', { note: noteNameOf(compass, keyNumber) })}</caption>
        <thead>
          <tr>
            <th scope="col"><span className="visually-hidden">{say('action.figure')}</span></th>
            {columns.map(({ upright: { state } }) => <th key={state} scope="col"><StateMark state={state} /></th>)}
          </tr>
        </thead>
        <tbody>
          {ROWS.filter(({ of }) => columns.some(({ key }) => of(key) !== undefined)).map(({ name, unit, decimals, of, output }) => {
            const label = say(`upright.row.${name}`);
            return (
              <tr key={name}>
                <th scope="row">{label}</th>
                {columns.map(({ upright, key }) => {
                  const value = of(key);
                  const story = output === undefined ? undefined : uprightStory(`${label}, ${noteNameOf(compass, keyNumber)}`, output, key, upright);
                  return <td key={upright.state}>{value === undefined ? <span className="soft">–</span> : story === undefined ? figure(value, decimals, unit) : <Figure value={value} decimals={decimals} {...(unit === undefined ? {} : { unit })} story={() => story} />}</td>;
                })}
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
}
