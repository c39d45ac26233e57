import type { KeyNumber } from '#instrument';
import { type PlottedScale, type ScaleFigure, scaleFigures, scalePlot } from '#plot';
import type { AskedBreaking } from '#strings';
import { percent } from '#units';
import { memo, useMemo } from 'react';
import { usePiano } from '../api/piano.tsx';
import { useLocale, useSay } from '../language/use-say.ts';
import { SceneView } from '../leaves/scene-view.tsx';
import type { StateScale } from './state-scale.ts';

interface ScalePlotsProps {
  readonly scales: readonly StateScale[];
  readonly widthPx: number;
  readonly selected?: KeyNumber | undefined;
  readonly onSelect: (key: KeyNumber) => void;
  readonly figures?: readonly ScaleFigure[];
}

/** Tension, share of breaking, inharmonicity and impedance over the same keys, states overlaid. */
export function ScalePlots({ scales, figures = scaleFigures, ...rest }: ScalePlotsProps) {
  const say = useSay();
  const { scale: terms } = usePiano();
  const [least, most] = [terms?.leastBreakingPct, terms?.mostBreakingPct];
  const asked = useMemo((): AskedBreaking => ({ ...(least == null ? {} : { leastPct: percent(least) }), ...(most == null ? {} : { mostPct: percent(most) }) }), [least, most]);
  const plotted = useMemo(() => scales.map(({ state, isTrial, analysis }) => ({ state, label: say(isTrial ? 'strings.trial.legend' : `state.${state}`), scale: analysis })), [scales, say]);
  return <div className="key-plots">{figures.map((figure) => <ScalePlot key={figure} figure={figure} scales={plotted} asked={asked} {...rest} />)}</div>;
}

interface ScalePlotProps extends Omit<ScalePlotsProps, 'scales' | 'figures'> {
  readonly figure: ScaleFigure;
  readonly scales: readonly PlottedScale[];
  readonly asked: AskedBreaking;
}

/** One plot; the chosen key is laid over it, so that choosing draws nothing anew. */
const ScalePlot = memo(function ScalePlot({ figure, scales, asked, widthPx, selected, onSelect }: ScalePlotProps) {
  const say = useSay();
  const locale = useLocale();
  const { compass } = usePiano();
  const scene = useMemo(() => {
    const name = say(`strings.figure.${figure}`);
    const description = say('strings.plots.described', { what: name, states: scales.map(({ label }) => label).join(', ') });
    return scalePlot({ figure, scales, asked, compass, locale, widthPx, heightPx: 210, title: name, description, yLabel: name });
  }, [asked, compass, figure, locale, say, scales, widthPx]);
  return <SceneView scene={scene} selected={selected} onKey={onSelect} />;
});
