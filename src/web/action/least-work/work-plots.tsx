import type { KeyPlan, TouchAnalysis } from '#action';
import type { KeyNumber } from '#instrument';
import { type TouchFigure, leastWorkPlot, touchFigures } from '#plot';
import { memo, useMemo } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { useLocale, useSay } from '../../language/use-say.ts';
import { SceneView } from '../../leaves/scene-view.tsx';

interface WorkPlotsProps {
  readonly touch: TouchAnalysis;
  readonly plans: readonly KeyPlan[];
  readonly widthPx: number;
  readonly selected: KeyNumber | undefined;
  readonly onSelect: (key: KeyNumber) => void;
}

/** Down, up, balance and friction weight over the same keys, as found and as expected after the work. */
export function WorkPlots(props: WorkPlotsProps) {
  return <div className="key-plots">{touchFigures.map((figure) => <WorkPlot key={figure} figure={figure} {...props} />)}</div>;
}

/** One plot; the chosen key is laid over it, so that choosing draws nothing anew. */
const WorkPlot = memo(function WorkPlot({ figure, touch, plans, widthPx, selected, onSelect }: WorkPlotsProps & { readonly figure: TouchFigure }) {
  const say = useSay();
  const locale = useLocale();
  const { compass, intent, instrument } = usePiano();
  const scene = useMemo(() => {
    const title = say(`action.figure.${figure}`);
    const found = { state: 'found' as const, label: say('state.found'), touch };
    const usualFriction = instrument.kind === 'grand' && !touch.caveats.includes('dampersResting');
    return leastWorkPlot({ figure, found, plans, expected: say('leastWork.expected'), compass, intent, usualFriction, locale, widthPx, heightPx: 210, title, description: say('leastWork.plots.described', { what: title }), yLabel: title });
  }, [compass, figure, instrument, intent, locale, plans, say, touch, widthPx]);
  return <SceneView scene={scene} selected={selected} onKey={onSelect} />;
});
