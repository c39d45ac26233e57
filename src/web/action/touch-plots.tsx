import type { KeyNumber } from '#instrument';
import { keyPlot } from '#plot';
import { memo, useMemo } from 'react';
import { usePiano } from '../api/piano.tsx';
import { useLocale, useSay } from '../language/use-say.ts';
import { SceneView } from '../leaves/scene-view.tsx';
import { type StateAnalysis, type TouchFigure, boundsOf, pointsOf, touchFigures } from './touch-series.ts';

interface TouchPlotsProps {
  readonly analyses: readonly StateAnalysis[];
  readonly widthPx: number;
  readonly selected: KeyNumber | undefined;
  readonly onSelect: (key: KeyNumber) => void;
}

/** Down, up, balance and friction weight over the same keys, states overlaid. */
export function TouchPlots({ analyses, ...rest }: TouchPlotsProps) {
  const say = useSay();
  if (analyses.length === 0) return null;
  return (
    <section className="touch-plots" aria-label={say('action.plots')}>
      {touchFigures.map((figure) => <TouchPlot key={figure} figure={figure} analyses={analyses} {...rest} />)}
    </section>
  );
}

const TouchPlot = memo(function TouchPlot({ figure, analyses, widthPx, selected, onSelect }: TouchPlotsProps & { readonly figure: TouchFigure }) {
  const say = useSay();
  const locale = useLocale();
  const { compass, intent, instrument } = usePiano();
  const isUpright = instrument.kind === 'upright';
  const scene = useMemo(() => {
    const latest = analyses.at(-1)?.analysis.keys ?? [];
    const series = analyses.map(({ state, analysis }) => ({ state, label: say(`state.${state}`), points: pointsOf(figure, analysis) }));
    const name = say(`action.figure.${figure}`);
    return keyPlot({
      compass, series, locale, widthPx, heightPx: 210, title: name, yLabel: name, unitSign: 'g', highlightKey: selected,
      description: say('action.plots.described', { what: name, states: series.map(({ label }) => label).join(', ') }),
      ...boundsOf(figure, { compass, intent, targets: latest.map(({ targetG }) => targetG), isUpright }),
    });
  }, [analyses, compass, figure, intent, isUpright, locale, say, selected, widthPx]);
  return <SceneView scene={scene} onKey={onSelect} />;
});
