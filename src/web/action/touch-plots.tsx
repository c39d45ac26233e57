import type { KeyNumber } from '#instrument';
import { type TouchFigure, touchFigures, touchPlot } from '#plot';
import { memo, useMemo } from 'react';
import { usePiano } from '../api/piano.tsx';
import { useLocale, useSay } from '../language/use-say.ts';
import { SceneView } from '../leaves/scene-view.tsx';
import type { StateAnalysis } from './state-analysis.ts';

interface TouchPlotsProps {
  readonly analyses: readonly StateAnalysis[];
  readonly widthPx: number;
  readonly selected: KeyNumber | undefined;
  readonly onSelect: (key: KeyNumber) => void;
}

/** Down, up, balance and friction weight over the same keys, states overlaid. */
export function TouchPlots({ analyses, ...rest }: TouchPlotsProps) {
  return (
    <div className="key-plots">
      {touchFigures.map((figure) => <TouchPlot key={figure} figure={figure} analyses={analyses} {...rest} />)}
    </div>
  );
}

/** One plot; the chosen key is laid over it, so that choosing draws nothing anew. */
const TouchPlot = memo(function TouchPlot({ figure, analyses, widthPx, selected, onSelect }: TouchPlotsProps & { readonly figure: TouchFigure }) {
  const say = useSay();
  const locale = useLocale();
  const { compass, intent, instrument } = usePiano();
  const usualFriction = instrument.kind === 'grand' && !analyses.some(({ analysis }) => analysis.caveats.includes('dampersResting'));
  const scene = useMemo(() => {
    const touches = analyses.map(({ state, analysis }) => ({ state, label: say(`state.${state}`), touch: analysis }));
    const name = say(`action.figure.${figure}`);
    const description = say('action.plots.described', { what: name, states: touches.map(({ label }) => label).join(', ') });
    return touchPlot({ figure, touches, compass, intent, usualFriction, locale, widthPx, heightPx: 210, title: name, description, yLabel: name });
  }, [analyses, compass, figure, intent, usualFriction, locale, say, widthPx]);
  return <SceneView scene={scene} selected={selected} onKey={onSelect} />;
});
