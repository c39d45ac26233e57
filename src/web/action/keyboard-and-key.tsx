import type { KeyNumber } from '#instrument';
import { signsOf } from '#plot';
import { useMemo } from 'react';
import { KeysWithPlots } from '../keys/keys-with-plots.tsx';
import { useSay } from '../language/use-say.ts';
import { keyWithFinding } from './action-commands.ts';
import { KeyPanel } from './key-panel.tsx';
import { KeyboardFigures } from './keyboard-figures.tsx';
import { NextList } from './next-list.tsx';
import type { StateAnalysis } from './state-analysis.ts';
import { TouchPlots } from './touch-plots.tsx';

interface KeyboardAndKeyProps {
  readonly analyses: readonly StateAnalysis[];
  readonly shown: StateAnalysis;
  readonly selected: KeyNumber | undefined;
  readonly onKey: (key: KeyNumber) => void;
}

/** The row of keys marked by finding, the figures over the same keys, and beside them the key chosen or the whole keyboard. */
export function KeyboardAndKey({ analyses, shown: { state, analysis }, selected, onKey }: KeyboardAndKeyProps) {
  const say = useSay();
  const first = keyWithFinding(analysis, undefined, 1);
  const signs = useMemo(() => signsOf(analysis.keys), [analysis]);
  return (
    <KeysWithPlots
      signs={signs} selected={selected} onKey={onKey} keysLabel={say('action.keyboard')} plotsLabel={say('action.plots')}
      plots={(widthPx) => <TouchPlots analyses={analyses} widthPx={widthPx} selected={selected} onSelect={onKey} />}
    >
      {selected === undefined ? (
        <section className="panel">
          <h2>{say('action.choose')}</h2>
          <p>{say('action.pick')}</p>
          {first !== undefined && (
            <p>
              <button type="button" className="button" onClick={() => { onKey(first); }}>{say('action.first')}</button>
            </p>
          )}
          {analysis.next.length > 0 && <NextList next={analysis.next} />}
        </section>
      ) : (
        <KeyPanel keyNumber={selected} analyses={analyses} state={state} onKey={onKey} />
      )}
      <KeyboardFigures state={state} analysis={analysis} />
    </KeysWithPlots>
  );
}
