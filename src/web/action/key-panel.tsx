import type { KeyTouch } from '#action';
import type { State } from '#instrument';
import { useReadings } from '../api/use-readings.ts';
import { useFigures, useSay } from '../language/use-say.ts';
import { FindingItem } from './finding-item.tsx';
import { KeyFiguresTable } from './key-figures-table.tsx';
import { KeySplit } from './key-split.tsx';
import { NextList } from './next-list.tsx';
import type { StateAnalysis } from './state-analysis.ts';
import { KeyPanelFrame } from '../keys/key-panel-frame.tsx';

interface KeyPanelProps {
  readonly keyNumber: number;
  readonly analyses: readonly StateAnalysis[];
  readonly state: State;
  readonly onKey: (key: number) => void;
}

/** One key: verdict, causes and remedies, where its weight comes from, figures of every state, what to measure next. */
export function KeyPanel({ keyNumber, analyses, state, onKey }: KeyPanelProps) {
  const say = useSay();
  const touch = analyses.find((one) => one.state === state)?.analysis.keys.find(({ key }) => key === keyNumber);
  const readings = useReadings(state);
  return (
    <KeyPanelFrame keyNumber={keyNumber} onKey={onKey} className="key-panel">
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
    </KeyPanelFrame>
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
