import { toneUnits } from '#plot';
import type { ToneFigure } from '#tone';
import type { StateTone } from '#workshop';
import type { PlotRows } from './export-plot.tsx';

/** One row a note: key, note, state, the figure and its standard uncertainty, each in full. */
export function toneRowsOf(figure: ToneFigure, tones: readonly StateTone[], nameOf: (key: number) => string): PlotRows {
  const unit = { '': '', dB: 'Db', s: 'S', ct: 'Ct' }[toneUnits[figure]] ?? '';
  const head = ['key', 'note', 'state', `${figure}${unit}`, `${figure}Uncertainty${unit}`];
  return [head, ...tones.flatMap(({ state, notes }) => notes.flatMap(({ key, figures }) => {
    const own = figures[figure];
    return own === undefined ? [] : [[key, nameOf(key), state, own.value, own.uncertainty ?? '']];
  }))];
}
