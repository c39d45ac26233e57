import type { Scene } from '#plot';
import { usePiano } from '../../api/piano.tsx';
import { useSay } from '../../language/use-say.ts';
import { csvFile, pngOf, saveAs, svgFile } from './save-plot.ts';

/** A table as it is handed out: its head and its rows, every figure in full. */
export type PlotRows = readonly (readonly (string | number)[])[];

interface ExportPlotProps {
  readonly scene: Scene;
  /** Name of the file, behind that of the piano. */
  readonly name: string;
  readonly rows: () => PlotRows;
}

const formats = ['svg', 'png', 'csv'] as const;

/** Hands a plot out as a drawing, a picture or a table. */
export function ExportPlot({ scene, name, rows }: ExportPlotProps) {
  const say = useSay();
  const { instrument } = usePiano();
  const save = async (format: (typeof formats)[number]): Promise<void> => {
    const fileName = `${instrument.name} ${name}.${format}`;
    if (format === 'svg') saveAs(svgFile(scene), fileName);
    else if (format === 'png') saveAs(await pngOf(scene), fileName);
    else saveAs(csvFile(rows()), fileName);
  };
  return (
    <span className="export-plot no-print">
      {formats.map((format) => <button key={format} type="button" className="button button-quiet" aria-label={say('tone.export', { what: scene.title, format: format.toUpperCase() })} onClick={() => void save(format)}>{format.toUpperCase()}</button>)}
    </span>
  );
}
