import type { KeyNumber } from '#instrument';
import { type UprightPlotName, uprightFigureOf, uprightPlot, uprightPlots } from '#plot';
import { memo, useMemo } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { useLocale, useSay } from '../../language/use-say.ts';
import { SceneView } from '../../leaves/scene-view.tsx';
import type { StateUpright } from './state-upright.ts';

interface UprightPlotsProps {
  readonly uprights: readonly StateUpright[];
  readonly widthPx: number;
  readonly selected: KeyNumber | undefined;
  readonly onSelect: (key: KeyNumber) => void;
}

/** Balance, spring and damper at the key front, over the same keys; what is not known of any key is left out. */
export function UprightPlots({ uprights, ...rest }: UprightPlotsProps) {
  const known = uprightPlots.filter((name) => uprights.some(({ keys }) => keys.some((key) => uprightFigureOf(name, key) !== undefined)));
  return <div className="key-plots">{known.map((name) => <UprightPlot key={name} name={name} uprights={uprights} {...rest} />)}</div>;
}

/** One plot; the chosen key is laid over it, so that choosing draws nothing anew. */
const UprightPlot = memo(function UprightPlot({ name, uprights, widthPx, selected, onSelect }: UprightPlotsProps & { readonly name: UprightPlotName }) {
  const say = useSay();
  const locale = useLocale();
  const { compass } = usePiano();
  const scene = useMemo(() => {
    const states = uprights.map(({ state, keys }) => ({ state, label: say(`state.${state}`), worked: keys }));
    const title = say(`upright.plot.${name}`);
    const description = say('regulation.plots.described', { what: title, states: states.map(({ label }) => label).join(', ') });
    return uprightPlot({ name, states, compass, locale, widthPx, heightPx: 190, title, description, yLabel: name === 'balance' ? `${title} (— ${say('upright.plot.byParts')})` : title });
  }, [compass, locale, name, uprights, say, widthPx]);
  return <SceneView scene={scene} selected={selected} onKey={onSelect} />;
});
