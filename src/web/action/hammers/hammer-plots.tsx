import { publishedStrikeOf } from '#action';
import type { KeyNumber } from '#instrument';
import { type HammerFigure, hammerFigures, hammerPlot } from '#plot';
import { memo, useMemo } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { useLocale, useSay } from '../../language/use-say.ts';
import { SceneView } from '../../leaves/scene-view.tsx';
import type { StateHammers } from './state-hammers.ts';

interface HammerPlotsProps {
  readonly states: readonly StateHammers[];
  readonly widthPx: number;
  readonly selected: KeyNumber | undefined;
  readonly onSelect: (key: KeyNumber) => void;
}

const isKnown = (figure: HammerFigure, { analysis }: StateHammers): boolean => analysis.keys.some((key) => (figure === 'squarenessDeg' ? key.strike : key[figure]) !== undefined);

/** Strike ratio over what was published, felt over the least, bore over the level one, and how square the heads strike; what nobody read is left out. */
export function HammerPlots({ states, ...rest }: HammerPlotsProps) {
  const say = useSay();
  const known = hammerFigures.filter((figure) => states.some((one) => isKnown(figure, one)));
  return (
    <div className="key-plots">
      {known.map((figure) => <HammerPlot key={figure} figure={figure} states={states} {...rest} />)}
      {known.includes('strikeRatio') && <p className="soft small">{say('hammers.published')}</p>}
    </div>
  );
}

/** One plot; the chosen key is laid over it, so that choosing draws nothing anew. */
const HammerPlot = memo(function HammerPlot({ figure, states, widthPx, selected, onSelect }: HammerPlotsProps & { readonly figure: HammerFigure }) {
  const say = useSay();
  const locale = useLocale();
  const { compass } = usePiano();
  const scene = useMemo(() => {
    const plotted = states.map(({ state, analysis }) => ({ state, label: say(`state.${state}`), worked: analysis }));
    const title = say(`hammers.plot.${figure}`);
    const description = say('regulation.plots.described', { what: title, states: plotted.map(({ label }) => label).join(', ') });
    const leastFeltMm = states[0]?.gathered.input.keys.map(({ register }) => states[0]?.gathered.input.leastFeltMm[register] ?? 0) ?? [];
    return hammerPlot({ name: figure, states: plotted, published: publishedStrikeOf(compass), leastFeltMm, compass, locale, widthPx, heightPx: 200, title, description, yLabel: title });
  }, [compass, figure, locale, say, states, widthPx]);
  return <SceneView scene={scene} selected={selected} onKey={onSelect} />;
});
