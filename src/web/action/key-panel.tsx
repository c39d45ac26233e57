import type { KeyTouch } from '#action';
import { type State, keyCountOf, noteNameOf } from '#instrument';
import { usePiano } from '../api/piano.tsx';
import { useFigures, useSay } from '../language/use-say.ts';
import { FindingItem } from './finding-item.tsx';
import { KeyFiguresTable } from './key-figures-table.tsx';
import type { StateAnalysis } from './touch-series.ts';

interface KeyPanelProps {
  readonly keyNumber: number;
  readonly analyses: readonly StateAnalysis[];
  readonly state: State;
  readonly onKey: (key: number) => void;
}

/** One key: verdict, figures of every state and how each was made, causes, remedies, what to measure next. */
export function KeyPanel({ keyNumber, analyses, state, onKey }: KeyPanelProps) {
  const say = useSay();
  const { compass } = usePiano();
  const touch = analyses.find((one) => one.state === state)?.analysis.keys.find(({ key }) => key === keyNumber);
  const last = keyCountOf(compass);
  return (
    <section className="panel key-panel" aria-label={say('action.key', { note: noteNameOf(compass, keyNumber), key: keyNumber })}>
      <header className="row row-between">
        <h2>{say('action.key', { note: noteNameOf(compass, keyNumber), key: keyNumber })}</h2>
        <div className="row">
          <button type="button" className="button" disabled={keyNumber === 1} onClick={() => { onKey(keyNumber - 1); }}>{say('action.key.below')}</button>
          <button type="button" className="button" disabled={keyNumber === last} onClick={() => { onKey(keyNumber + 1); }}>{say('action.key.above')}</button>
        </div>
      </header>
      {touch !== undefined && <Verdict touch={touch} />}
      <KeyFiguresTable keyNumber={keyNumber} analyses={analyses} />
      {touch !== undefined && touch.findings.length > 0 && (
        <>
          <h3>{say('action.findings')}</h3>
          <ol className="findings">
            {touch.findings.map((finding) => <FindingItem key={finding.cause} finding={finding} />)}
          </ol>
        </>
      )}
      {touch !== undefined && touch.findings.length === 0 && touch.verdict !== 'unmeasured' && <p className="soft">{say('action.findings.none')}</p>}
      {touch !== undefined && touch.next.length > 0 && <NextList next={touch.next} />}
    </section>
  );
}

function Verdict({ touch }: { readonly touch: KeyTouch }) {
  const say = useSay();
  const figure = useFigures();
  const { verdict, deviationG, targetG, doubtful, upWeightLow, figures } = touch;
  return (
    <p>
      <strong>{say(`verdict.${verdict}`)}</strong>
      {figures.outcome !== undefined && ` · ${say(`outcome.${figures.outcome}`)}`}
      {deviationG !== undefined && targetG !== undefined && ` · ${say('action.deviation', { deviation: figure(deviationG, 1, 'g', true), target: figure(targetG, 1, 'g') })}`}
      {doubtful && ` · ${say('verdict.doubtful')}`}
      {upWeightLow && ` · ${say('verdict.upWeightLow')}`}
    </p>
  );
}

/** Measurements worth taking next, most telling first, each with its reason. */
export function NextList({ next }: { readonly next: KeyTouch['next'] }) {
  const say = useSay();
  return (
    <div>
      <h3>{say('action.next')}</h3>
      <ul className="next-list">
        {next.map((measurement) => (
          <li key={measurement}>
            <strong>{say(`next.${measurement}`)}</strong> <span className="soft">{say(`next.${measurement}.why`)}</span>
          </li>
        ))}
      </ul>
    </div>
  );
}
