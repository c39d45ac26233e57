import type { AnalysedHammer } from '#action';
import { type KeyNumber, type State, noteNameOf } from '#instrument';
import type { ReactNode } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { Figure } from '../../figure/figure.tsx';
import { useFigures, useSay } from '../../language/use-say.ts';
import { StateMark } from '../../leaves/state-mark.tsx';
import { decimalsFor } from '../../story/say-event.ts';
import { Note } from '../../ui/note.tsx';
import { KeyPanelFrame } from '../../keys/key-panel-frame.tsx';
import { strikeRatioStory, strikeStory } from './hammer-stories.ts';
import type { StateHammers } from './state-hammers.ts';

interface HammerPanelProps {
  readonly keyNumber: KeyNumber;
  readonly states: readonly StateHammers[];
  readonly state: State;
  readonly onKey: (key: KeyNumber) => void;
}

/** One hammer: what is found of it, and its figures in every state, the derived ones open. */
export function HammerPanel({ keyNumber, states, state, onKey }: HammerPanelProps) {
  const say = useSay();
  const hammer = hammerOf(states.find((one) => one.state === state), keyNumber);
  return (
    <KeyPanelFrame keyNumber={keyNumber} onKey={onKey}>
      {hammer !== undefined && hammer.findings.length === 0 && <p>{say('hammers.within')}</p>}
      {hammer?.findings.map((finding) => <Found key={finding.code} finding={finding} />)}
      <HammerTable keyNumber={keyNumber} states={states} />
    </KeyPanelFrame>
  );
}

const hammerOf = (hammers: StateHammers | undefined, keyNumber: KeyNumber): AnalysedHammer | undefined => hammers?.analysis.keys.find(({ key }) => key === keyNumber);

function Found({ finding: { code, figureMm, limitMm } }: { readonly finding: AnalysedHammer['findings'][number] }) {
  const say = useSay();
  const figure = useFigures();
  return <Note tone="warn"><p><span aria-hidden="true">▲ </span>{say(`hammers.finding.${code}`, { figure: figure(figureMm, 1, 'mm'), limit: figure(limitMm, 1, 'mm') })}</p></Note>;
}

const read = ['strikeDistanceMm', 'speakingLengthMm', 'feltOverWoodMm', 'boreMm', 'rakeDeg', 'stringHeightMm'] as const;
const standing = ['shankDeg', 'squarenessDeg', 'strikeShiftMm'] as const;

function HammerTable({ keyNumber, states }: Pick<HammerPanelProps, 'keyNumber' | 'states'>) {
  const say = useSay();
  const figure = useFigures();
  const { compass } = usePiano();
  const columns = states.flatMap((hammers) => {
    const hammer = hammerOf(hammers, keyNumber);
    return hammer === undefined ? [] : [{ hammers, hammer }];
  });
  const row = (name: string, cell: (column: (typeof columns)[number]) => ReactNode) => {
    const cells = columns.map((column) => ({ state: column.hammers.state, shown: cell(column) }));
    return cells.some(({ shown }) => shown !== null) && (
      <tr key={name}>
        <th scope="row">{name}</th>
        {cells.map(({ state, shown }) => <td key={state}>{shown ?? <span className="soft">–</span>}</td>)}
      </tr>
    );
  };
  const ratio = say('hammers.plot.strikeRatio');
  return (
    <div className="table-wrap">
      <table className="figures-table">
        <caption className="visually-hidden">{say('hammers.key.figures', { note: noteNameOf(compass, keyNumber) })}</caption>
        <thead>
          <tr>
            <th scope="col"><span className="visually-hidden">{say('action.figure')}</span></th>
            {columns.map(({ hammers: { state } }) => <th key={state} scope="col"><StateMark state={state} /></th>)}
          </tr>
        </thead>
        <tbody>
          {read.map((name) => row(say(`quantity.${name}.name`), ({ hammer }) => (hammer[name] === undefined ? null : <>{figure(hammer[name], name === 'speakingLengthMm' ? 1 : decimalsFor(hammer[name], 1), name === 'rakeDeg' ? 'deg' : 'mm')}</>)))}
          {row(ratio, ({ hammers, hammer }) => {
            const story = strikeRatioStory(ratio, hammer, { hammers, compass });
            if (hammer.strikeRatio === undefined || story === undefined) return null;
            return <><Figure value={hammer.strikeRatio} decimals={4} story={() => story} />{hammer.strikeRatio > 0 && <span className="soft figure-doubt"> {say('hammers.parts', { parts: figure(1 / hammer.strikeRatio, 1) })}</span>}</>;
          })}
          {standing.map((name) => row(say(`hammers.section.${name}`), ({ hammers, hammer }) => {
            const story = strikeStory(say(`hammers.section.${name}`), name, hammer, { hammers, compass });
            return hammer.strike === undefined || story === undefined ? null : <Figure value={hammer.strike[name]} decimals={2} unit={name === 'strikeShiftMm' ? 'mm' : 'deg'} story={() => story} />;
          }))}
          {row(say('hammers.section.levelBoreMm'), ({ hammers, hammer }) => {
            const story = strikeStory(say('hammers.section.levelBoreMm'), 'levelBoreMm', hammer, { hammers, compass });
            return hammer.levelBoreMm === undefined || story === undefined ? null : <Figure value={hammer.levelBoreMm} decimals={1} unit="mm" story={() => story} />;
          })}
        </tbody>
      </table>
    </div>
  );
}
