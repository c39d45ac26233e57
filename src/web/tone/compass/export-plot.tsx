import { noteNameOf } from '#instrument';
import { type Scene, type ToneFigure, toneUnits } from '#plot';
import { usePiano } from '../../api/piano.tsx';
import { useSay } from '../../language/use-say.ts';
import { csvFile, pngOf, saveAs, svgFile } from './save-plot.ts';
import type { StateTone } from './state-tone.ts';

interface ExportPlotProps {
  readonly scene: Scene;
  readonly figure: ToneFigure;
  readonly tones: readonly StateTone[];
}

const formats = ['svg', 'png', 'csv'] as const;

/** Hands a plot out as a drawing, a picture or a table. */
export function ExportPlot({ scene, figure, tones }: ExportPlotProps) {
  const say = useSay();
  const { instrument, compass } = usePiano();
  const save = async (format: (typeof formats)[number]): Promise<void> => {
    const name = `${instrument.name} ${figure}.${format}`;
    if (format === 'svg') saveAs(svgFile(scene), name);
    else if (format === 'png') saveAs(await pngOf(scene), name);
    else saveAs(csvFile(rowsOf(figure, tones, (key) => noteNameOf(compass, key))), name);
  };
  return (
    <span className="export-plot no-print">
      {formats.map((format) => <button key={format} type="button" className="button button-quiet" aria-label={say('tone.export', { what: scene.title, format: format.toUpperCase() })} onClick={() => void save(format)}>{format.toUpperCase()}</button>)}
    </span>
  );
}

/** One row a note: key, note, state, the figure and its standard uncertainty, each in full. */
function rowsOf(figure: ToneFigure, tones: readonly StateTone[], nameOf: (key: number) => string): readonly (readonly (string | number)[])[] {
  const unit = { '': '', dB: 'Db', s: 'S', ct: 'Ct' }[toneUnits[figure]] ?? '';
  const head = ['key', 'note', 'state', `${figure}${unit}`, `${figure}Uncertainty${unit}`];
  return [head, ...tones.flatMap(({ state, notes }) => notes.flatMap(({ key, figures }) => {
    const own = figures[figure];
    return own === undefined ? [] : [[key, nameOf(key), state, own.value, own.uncertainty ?? '']];
  }))];
}
