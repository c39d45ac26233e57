import { type KeyNumber, type State, states } from '#instrument';
import { keyPlot } from '#plot';
import { memo, useMemo } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { useLocale, useSay } from '../../language/use-say.ts';
import { SceneView } from '../../leaves/scene-view.tsx';
import { useWidth } from '../../leaves/use-width.ts';
import { useDesk } from '../desk.tsx';
import type { SheetRow } from '../sheet/sheet-row.ts';
import { useFrameRows } from './use-frame-rows.ts';

type Plotted = 'downWeightG' | 'upWeightG' | 'frictionG';
const plotted: readonly Plotted[] = ['downWeightG', 'upWeightG', 'frictionG'];

interface LivePlotsProps {
  /** Takes the reader to a key pressed in a plot. */
  readonly onKey: (key: KeyNumber) => void;
}

/** Down weight, up weight and friction over the keys while they are typed; other states behind, each by its own mark. */
export const LivePlots = memo(function LivePlots({ onKey }: LivePlotsProps) {
  const { sheet, state } = useDesk();
  const rows = useFrameRows(sheet);
  const [widthPx, ref] = useWidth(480);
  return (
    <div ref={ref} className="live-plots">
      {plotted.map((figure) => (
        <LivePlot key={figure} figure={figure} state={state} widthPx={widthPx} found={rows.found} planned={rows.planned} finished={rows.finished} onKey={onKey} />
      ))}
    </div>
  );
});

interface LivePlotProps extends LivePlotsProps, Readonly<Record<State, readonly SheetRow[]>> {
  readonly figure: Plotted;
  readonly state: State;
  readonly widthPx: number;
}

const LivePlot = memo(function LivePlot({ figure, state, widthPx, found, planned, finished, onKey }: LivePlotProps) {
  const say = useSay();
  const locale = useLocale();
  const { compass } = usePiano();
  const scene = useMemo(() => {
    const of = { found, planned, finished };
    const order = [...states.filter((other) => other !== state), state];
    const series = order.map((other) => ({
      state: other,
      label: say(`state.${other}`),
      points: of[other].flatMap((row) => (row[figure] === undefined && !row.outcome ? [] : [{ key: row.key, value: row[figure], outcome: row[figure] === undefined }])),
    })).filter(({ state: other, points }) => points.length > 0 || other === state);
    const name = figure === 'frictionG' ? say('readings.plot.friction') : say(`quantity.${figure}.name`);
    return keyPlot({
      compass, series, locale, widthPx, heightPx: figure === 'frictionG' ? 170 : 190, title: name, yLabel: name, unitSign: 'g',
      description: say('readings.plot.about', { what: name, state: series.map(({ label }) => label).join(', ') }),
    });
  }, [compass, figure, finished, found, locale, planned, say, state, widthPx]);
  return <SceneView scene={scene} onKey={onKey} />;
});
