import { type RegulationName, regulationNames } from '#action';
import type { KeyNumber } from '#instrument';
import { regulationPlot } from '#plot';
import { memo, useMemo } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { useLocale, useSay } from '../../language/use-say.ts';
import { SceneView } from '../../leaves/scene-view.tsx';
import type { StateRegulation } from './state-regulation.ts';

interface RegulationPlotsProps {
  readonly regulations: readonly StateRegulation[];
  readonly widthPx: number;
  readonly selected: KeyNumber | undefined;
  readonly onSelect: (key: KeyNumber) => void;
}

/** Every figure of the regulation that was read, over the same keys, with what is asked and its tolerance. */
export function RegulationPlots({ regulations, ...rest }: RegulationPlotsProps) {
  const read = regulationNames.filter((name) => regulations.some(({ analysis }) => analysis.rows.some((row) => row.name === name)));
  return <div className="key-plots">{read.map((name) => <RegulationPlot key={name} name={name} regulations={regulations} {...rest} />)}</div>;
}

/** One plot; the chosen key is laid over it, so that choosing draws nothing anew. */
const RegulationPlot = memo(function RegulationPlot({ name, regulations, widthPx, selected, onSelect }: RegulationPlotsProps & { readonly name: RegulationName }) {
  const say = useSay();
  const locale = useLocale();
  const { compass } = usePiano();
  const scene = useMemo(() => {
    const states = regulations.map(({ state, analysis }) => ({ state, label: say(`state.${state}`), worked: analysis }));
    const title = say(`quantity.${name}.short`);
    const description = say('regulation.plots.described', { what: say(`quantity.${name}.name`), states: states.map(({ label }) => label).join(', ') });
    return regulationPlot({ name, states, toleranceMm: regulations[0]?.gathered.input.tolerances[name] ?? 0, compass, locale, widthPx, heightPx: 190, title, description, yLabel: title });
  }, [compass, locale, name, regulations, say, widthPx]);
  return <SceneView scene={scene} selected={selected} onKey={onSelect} />;
});
