import type { KeyNumber } from '#instrument';
import { type BearingFigure, type PlottedBelly, bearingFigures, bearingPlot } from '#plot';
import { createContext, memo, useContext, useMemo } from 'react';
import { usePiano } from '../api/piano.tsx';
import { useLocale, useSay } from '../language/use-say.ts';
import { SceneView } from '../leaves/scene-view.tsx';
import { useWidth } from '../leaves/use-width.ts';
import type { StateBelly } from './state-belly.ts';

interface BearingPlotsProps {
  readonly bellies: readonly StateBelly[];
  readonly widthPx: number;
  readonly selected?: KeyNumber | undefined;
  readonly onSelect: (key: KeyNumber) => void;
  readonly figures?: readonly BearingFigure[];
}

/** Total angle with what is asked, force, front and rear angle over the same keys, states overlaid. */
export function BearingPlots({ bellies, figures = bearingFigures, ...rest }: BearingPlotsProps) {
  const say = useSay();
  const plotted = useMemo(() => bellies.map(({ state, analysis }) => ({ state, label: say(`state.${state}`), belly: analysis })), [bellies, say]);
  const asked = bellies[0]?.gathered.input.asked;
  return <div className="key-plots">{figures.map((figure) => <BearingPlot key={figure} figure={figure} bellies={plotted} asked={asked ?? {}} {...rest} />)}</div>;
}

interface BearingPlotProps extends Omit<BearingPlotsProps, 'bellies' | 'figures'> {
  readonly figure: BearingFigure;
  readonly bellies: readonly PlottedBelly[];
  readonly asked: StateBelly['gathered']['input']['asked'];
}

/** One plot; the chosen key is laid over it, so that choosing draws nothing anew. */
const BearingPlot = memo(function BearingPlot({ figure, bellies, asked, widthPx, selected, onSelect }: BearingPlotProps) {
  const say = useSay();
  const locale = useLocale();
  const { compass } = usePiano();
  const scene = useMemo(() => {
    const name = say(`belly.figure.${figure}`);
    const description = say('belly.plots.described', { what: name, states: bellies.map(({ label }) => label).join(', ') });
    return bearingPlot({ figure, bellies, asked, compass, locale, widthPx, heightPx: 210, title: name, description, yLabel: name });
  }, [asked, bellies, compass, figure, locale, say, widthPx]);
  return <SceneView scene={scene} selected={selected} onKey={onSelect} />;
});

/** The bearing that the plots beside a grid follow: it changes with every figure, the grid's layout does not. */
export const BelliesBeside = createContext<readonly StateBelly[]>([]);

const beside: readonly BearingFigure[] = ['total', 'force'];

/** The plots that stand beside the grid of heights and follow it. */
export function BearingAside({ onKey }: { readonly onKey: (key: KeyNumber) => void }) {
  const bellies = useContext(BelliesBeside);
  const [widthPx, ref] = useWidth(480);
  return (
    <div ref={ref} className="live-plots">
      <BearingPlots bellies={bellies} figures={beside} widthPx={widthPx} onSelect={onKey} />
    </div>
  );
}
