import { type KeyNumber, noteNameOf } from '#instrument';
import { type Scene, throughGaps, tonePlot } from '#plot';
import { type ToneFigure, toneFigures } from '#tone';
import type { StandOuts, StateTone } from '#workshop';
import { memo, useMemo } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { useLocale, useSay } from '../../language/use-say.ts';
import { SceneView } from '../../leaves/scene-view.tsx';
import { ExportPlot } from './export-plot.tsx';
import { toneRowsOf } from './tone-rows.ts';

interface CompassPlotsProps {
  readonly tones: readonly StateTone[];
  /** Inharmonicity worked out from the strings, by key. */
  readonly computedB: ReadonlyMap<KeyNumber, number>;
  /** What the state shown last is like along its keys. */
  readonly standOuts: StandOuts | undefined;
  readonly widthPx: number;
  readonly selected: KeyNumber | undefined;
  readonly onSelect: (key: KeyNumber) => void;
}

const isKnown = (figure: ToneFigure, tones: readonly StateTone[]): boolean => tones.some(({ notes }) => notes.some(({ figures }) => figures[figure] !== undefined));

/** Brightness, balance, level, sustain, inharmonicity and pitch over the keys, states overlaid; what nothing was heard of is left out. */
export function CompassPlots(props: CompassPlotsProps) {
  return <div className="key-plots">{toneFigures.filter((figure) => isKnown(figure, props.tones)).map((figure) => <CompassPlot key={figure} figure={figure} {...props} />)}</div>;
}

/** One plot; the chosen key is laid over it, so that choosing draws nothing anew. */
const CompassPlot = memo(function CompassPlot({ figure, tones, computedB, standOuts, widthPx, selected, onSelect }: CompassPlotsProps & { readonly figure: ToneFigure }) {
  const say = useSay();
  const locale = useLocale();
  const { compass } = usePiano();
  const scene = useMemo((): Scene => {
    const states = tones.map(({ state, notes }) => ({ state, label: say(`state.${state}`), notes }));
    const title = say(`tone.figure.${figure}`);
    const description = say('tone.plots.described', { what: title, states: states.map(({ label }) => label).join(', ') });
    const even = figure === 'brightness' || figure === 'level' || figure === 'sustain' ? standOuts?.even[figure] : undefined;
    const heard = states.flatMap(({ notes }) => notes.map(({ key }) => key));
    const [lowest, highest] = [Math.min(...heard), Math.max(...heard)];
    const curve = figure === 'inharmonicity' ? new Map([...computedB].filter(([key]) => key >= lowest && key <= highest)) : new Map(even?.keys.map(({ key, curve: at }) => [key, at]));
    const target = figure === 'pitch' ? 0 : curve.size === 0 ? undefined : throughGaps(curve);
    return tonePlot({ figure, states, compass, locale, widthPx, heightPx: 200, title, description, yLabel: title, target, flags: new Set(even?.outliers) });
  }, [compass, computedB, figure, locale, say, standOuts, tones, widthPx]);
  return (
    <figure className="tone-figure">
      <SceneView scene={scene} selected={selected} onKey={onSelect} />
      <figcaption className="soft small">{say(`tone.figure.${figure}.about`)} <ExportPlot scene={scene} name={figure} rows={() => toneRowsOf(figure, tones, (key) => noteNameOf(compass, key))} /></figcaption>
    </figure>
  );
});
