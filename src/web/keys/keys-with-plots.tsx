import type { KeyNumber } from '#instrument';
import type { KeySign } from '#plot';
import type { ReactNode } from 'react';
import { usePiano } from '../api/piano.tsx';
import { KeyboardRow } from '../leaves/keyboard-row.tsx';
import { ScrolledPlots } from '../leaves/scrolled-plots.ts';
import { useWidth } from '../leaves/use-width.ts';
import { SignLegend } from './sign-legend.tsx';
import { useKeysInView } from './use-keys-in-view.ts';
import './keys.css';

interface KeysWithPlotsProps {
  readonly signs: ReadonlyMap<KeyNumber, KeySign>;
  readonly selected: KeyNumber | undefined;
  readonly onKey: (key: KeyNumber) => void;
  /** What is said of the row of keys, and of the plots. */
  readonly keysLabel: string;
  readonly plotsLabel: string;
  /** The plots, as wide as the row of keys. */
  readonly plots: (widthPx: number) => ReactNode;
  /** What stands beside: the key chosen, and the whole. */
  readonly children: ReactNode;
}

/** Below this width the keys of a whole keyboard are too narrow to point at. */
const LEAST_KEYS_PX = 560;

/** The row of keys marked by sign, plots over the same keys that scroll with it, and a column beside. */
export function KeysWithPlots({ signs, selected, onKey, keysLabel, plotsLabel, plots, children }: KeysWithPlotsProps) {
  const { compass } = usePiano();
  const [width, ref] = useWidth(960);
  const drawn = Math.max(width, LEAST_KEYS_PX);
  const inView = useKeysInView(selected);
  return (
    <div className="keyboard-and-key">
      <div className="keys-column" ref={ref}>
        <SignLegend signs={signs} />
        <div className="keys-scroll" ref={inView.keys} onScroll={inView.onScroll}>
          <KeyboardRow compass={compass} signs={signs} widthPx={drawn} keyHeightPx={Math.max(72, Math.round(drawn / 11))} align="plot" label={keysLabel} selected={selected} onSelect={onKey} />
        </div>
      </div>
      {/* eslint-disable-next-line jsx-a11y/no-noninteractive-tabindex -- what scrolls must be reachable by keyboard */}
      <div className="plots-column keys-scroll" tabIndex={0} role="region" aria-label={plotsLabel} ref={inView.plots} onScroll={inView.onScroll}>
        <ScrolledPlots value={drawn > width}>{plots(drawn)}</ScrolledPlots>
      </div>
      <div className="key-column">{children}</div>
    </div>
  );
}
