import type { KeyNumber } from '#instrument';
import { signsOf } from '#plot';
import { useMemo } from 'react';
import { usePiano } from '../api/piano.tsx';
import { useSay } from '../language/use-say.ts';
import { KeyboardRow } from '../leaves/keyboard-row.tsx';
import { useWidth } from '../leaves/use-width.ts';
import { keyWithFinding } from './action-commands.ts';
import { KeyPanel } from './key-panel.tsx';
import { KeyboardFigures } from './keyboard-figures.tsx';
import { NextList } from './next-list.tsx';
import { SignLegend } from './sign-legend.tsx';
import type { StateAnalysis } from './state-analysis.ts';
import { TouchPlots } from './touch-plots.tsx';
import { useKeysInView } from './use-keys-in-view.ts';

interface KeyboardAndKeyProps {
  readonly analyses: readonly StateAnalysis[];
  readonly shown: StateAnalysis;
  readonly selected: KeyNumber | undefined;
  readonly onKey: (key: KeyNumber) => void;
}

/** Below this width the keys of a whole keyboard are too narrow to point at. */
const LEAST_KEYS_PX = 720;

/** The row of keys marked by finding, the figures over the same keys, and beside them the key chosen or the whole keyboard. */
export function KeyboardAndKey({ analyses, shown: { state, analysis }, selected, onKey }: KeyboardAndKeyProps) {
  const say = useSay();
  const { compass } = usePiano();
  const [width, ref] = useWidth(960);
  const drawn = Math.max(width, LEAST_KEYS_PX);
  const first = keyWithFinding(analysis, undefined, 1);
  const inView = useKeysInView(selected);
  const signs = useMemo(() => signsOf(analysis.keys), [analysis]);
  return (
    <div className="keyboard-and-key">
      <div className="keys-column" ref={ref}>
        <SignLegend signs={signs} />
        <div className="keys-scroll" ref={inView.keys} onScroll={inView.onScroll}>
          <KeyboardRow compass={compass} signs={signs} widthPx={drawn} keyHeightPx={Math.max(72, Math.round(drawn / 11))} align="plot" label={say('action.keyboard')} selected={selected} onSelect={onKey} />
        </div>
      </div>
      {/* eslint-disable-next-line jsx-a11y/no-noninteractive-tabindex -- what scrolls must be reachable by keyboard */}
      <div className="plots-column keys-scroll" tabIndex={0} role="region" aria-label={say('action.plots')} ref={inView.plots} onScroll={inView.onScroll}>
        <TouchPlots analyses={analyses} widthPx={drawn} selected={selected} onSelect={onKey} />
      </div>
      <div className="key-column">
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
      </div>
    </div>
  );
}
