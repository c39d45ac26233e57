import type { KeyTouch } from '#action';
import { type State, keyCountOf, noteNameOf } from '#instrument';
import { usePiano } from '../api/piano.tsx';
import { useReadings } from '../api/use-readings.ts';
import { useFigures, useSay } from '../language/use-say.ts';
import { FindingItem } from './finding-item.tsx';
import { KeyFiguresTable } from './key-figures-table.tsx';
import { KeySplit } from './key-split.tsx';
import { NextList } from './next-list.tsx';
import type { StateAnalysis } from './state-analysis.ts';

interface KeyPanelProps {
  readonly keyNumber: number;
  readonly analyses: readonly StateAnalysis[];
  readonly state: State;
  readonly onKey: (key: number) => void;
}

/** One key: verdict, causes and remedies, where its weight comes from, figures of every state, what to measure next. */
export function KeyPanel({ keyNumber, analyses, state, onKey }: KeyPanelProps) {
  const say = useSay();
  const { compass } = usePiano();
  const touch = analyses.find((one) => one.state === state)?.analysis.keys.find(({ key }) => key === keyNumber);
  const readings = useReadings(state);
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
      {touch !== undefined && touch.findings.length > 0 && (
        <>
          <h3>{say('action.findings')}</h3>
          <ol className="findings">
            {touch.findings.map((finding) => <FindingItem key={finding.cause} finding={finding} />)}
          </ol>
        </>
      )}
      {touch !== undefined && touch.findings.length === 0 && touch.verdict !== 'unmeasured' && <p className="soft">{say('action.findings.none')}</p>}
      <KeyFiguresTable keyNumber={keyNumber} analyses={analyses} />
      {touch !== undefined && <KeySplit behind={{ touch, readings: [...readings.values()] }} />}
      {touch !== undefined && touch.next.length > 0 && <NextList next={touch.next} />}
    </section>
  );
}

function Verdict({ touch }: { readonly touch: KeyTouch }) {
  const say = useSay();
  const figure = useFigures();
  const { verdict, deviationG, targetG, doubtful, upWeightLow, upAboveDown, figures: { outcome, downWeightG, upWeightG } } = touch;
  return (
    <p>
      <strong>{say(`verdict.${verdict}`)}</strong>
      {outcome !== undefined && ` · ${say(`outcome.${outcome}`)}`}
      {deviationG !== undefined && targetG !== undefined && ` · ${say('action.deviation', { deviation: figure(deviationG, 1, 'g', true), target: figure(targetG, 1, 'g') })}`}
      {doubtful && ` · ${say('verdict.doubtful')}`}
      {upWeightLow && ` · ${say('verdict.upWeightLow')}`}
      {upAboveDown && downWeightG !== undefined && upWeightG !== undefined && ` · ${say('verdict.upAboveDown', { up: figure(upWeightG.value, 1, 'g'), down: figure(downWeightG.value, 1, 'g') })}`}
    </p>
  );
}
