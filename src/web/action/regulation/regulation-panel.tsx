import { type RegulatedKey, regulationNames } from '#action';
import { type KeyNumber, type State, noteNameOf, quantityOf } from '#instrument';
import { usePiano } from '../../api/piano.tsx';
import { Figure } from '../../figure/figure.tsx';
import { useFigures, useSay } from '../../language/use-say.ts';
import { StateMark } from '../../leaves/state-mark.tsx';
import { decimalsFor } from '../../story/say-event.ts';
import { KeyPanelFrame } from '../../keys/key-panel-frame.tsx';
import { RegulationFindings } from './finding-list.tsx';
import { givenAftertouchStory } from './regulation-stories.ts';
import type { StateRegulation } from './state-regulation.ts';

interface RegulationPanelProps {
  readonly keyNumber: KeyNumber;
  readonly regulations: readonly StateRegulation[];
  readonly state: State;
  readonly onKey: (key: KeyNumber) => void;
}

/** One key: what is found of its regulation, what to turn, and its figures in every state beside what is asked. */
export function RegulationPanel({ keyNumber, regulations, state, onKey }: RegulationPanelProps) {
  const regulated = keyOf(regulations.find((one) => one.state === state), keyNumber);
  return (
    <KeyPanelFrame keyNumber={keyNumber} onKey={onKey}>
      {regulated !== undefined && <RegulationFindings regulated={regulated} />}
      <RegulationTable keyNumber={keyNumber} regulations={regulations} state={state} />
    </KeyPanelFrame>
  );
}

const keyOf = (regulation: StateRegulation | undefined, keyNumber: KeyNumber): RegulatedKey | undefined => regulation?.analysis.keys.find(({ key }) => key === keyNumber);

function RegulationTable({ keyNumber, regulations, state }: Omit<RegulationPanelProps, 'onKey'>) {
  const say = useSay();
  const figure = useFigures();
  const { compass } = usePiano();
  const columns = regulations.flatMap((regulation) => {
    const regulated = keyOf(regulation, keyNumber);
    return regulated === undefined ? [] : [{ regulation, regulated }];
  });
  const asked = columns.find(({ regulation }) => regulation.state === state)?.regulated.asked ?? {};
  const shown = regulationNames.filter((name) => asked[name] !== undefined || columns.some(({ regulated }) => regulated.read[name] !== undefined));
  const given = say('regulation.key.given');
  const none = <span className="soft">–</span>;
  return (
    <div className="table-wrap">
      <table className="figures-table">
        <caption className="visually-hidden">{say('regulation.key.figures', { note: noteNameOf(compass, keyNumber) })}</caption>
        <thead>
          <tr>
            <th scope="col"><span className="visually-hidden">{say('action.figure')}</span></th>
            <th scope="col">{say('regulation.key.asked')}</th>
            {columns.map(({ regulation }) => <th key={regulation.state} scope="col"><StateMark state={regulation.state} /></th>)}
          </tr>
        </thead>
        <tbody>
          {shown.map((name) => (
            <tr key={name}>
              <th scope="row">{say(`quantity.${name}.short`)}</th>
              <td>{asked[name] === undefined ? none : figure(asked[name], 2, 'mm')}</td>
              {columns.map(({ regulation, regulated }) => {
                const value = regulated.read[name];
                return <td key={regulation.state}>{value === undefined ? none : figure(value, decimalsFor(value, quantityOf(name).decimals), 'mm')}</td>;
              })}
            </tr>
          ))}
          {columns.some(({ regulated }) => regulated.givenAftertouchMm !== undefined) && (
            <tr>
              <th scope="row">{given}</th>
              <td>{none}</td>
              {columns.map(({ regulation, regulated }) => {
                const story = givenAftertouchStory(given, regulated, { regulation, compass });
                return <td key={regulation.state}>{story === undefined || regulated.givenAftertouchMm === undefined ? none : <Figure value={regulated.givenAftertouchMm} decimals={2} unit="mm" story={() => story} />}</td>;
              })}
            </tr>
          )}
        </tbody>
      </table>
    </div>
  );
}
