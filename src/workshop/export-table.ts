import { type Compass, type QuantityName, type Reading, type Scope, type State, colourOf, keysOf, noteNameOf, quantityNames, quantityOf } from '#instrument';
import { type ColumnTarget, targetName } from './import-target.ts';
import { basisWord, guarded, outcomeWord, partWord } from './import-words.ts';
import { placeText } from './place.ts';
import type { PrintedTable } from './table.ts';

/** Columns that stand even when nothing was read yet: an empty export is the form to fill in. */
const ALWAYS: readonly QuantityName[] = ['downWeightG', 'upWeightG'];

export interface ExportRequest {
  /** Standing readings; those of other cycles and states are passed over. */
  readonly readings: readonly Reading[];
  readonly compass: Compass;
  readonly cycle: number;
  readonly state: State;
  /** Language of the words; numbers are written by whoever writes the file. */
  readonly locale: string;
}

type FigureColumn = Extract<ColumnTarget, { quantity: unknown }>;

/**
 * Table of the standing readings of one cycle and state, in the form an import reads back as the same: `key`, `note`, a column
 * for each quantity read (`downWeightG`, `downWeightG#2` for a second weighing), one row for every key of the compass, then a
 * row each for naturals, sharps and the instrument where they have figures. Values in full precision, outcomes as their words,
 * remarks and a basis other than measured in columns of their own. What was typed stays with the reading; so does its uncertainty.
 */
export function tableOfReadings({ readings: all, compass, cycle, state, locale }: ExportRequest): PrintedTable {
  const readings = all.filter((reading) => reading.cycle === cycle && reading.state === state);
  const columns = columnsOf(readings);
  const byPlace = new Map(readings.map((reading) => [placeText(reading), reading]));
  const cellsAt = (scope: Scope, index: number): readonly (string | number)[] =>
    columns.map((column) => {
      const reading = byPlace.get(placeText({ cycle, state, quantity: column.quantity, repeat: column.repeat, scope, index }));
      return reading === undefined ? '' : cellOf(column, reading, locale);
    });
  const parts = ([['colour', 0], ['colour', 1], ['instrument', 0]] as const).filter(([scope, index]) => readings.some((reading) => reading.scope === scope && reading.index === index));
  return {
    header: ['key', 'note', ...columns.map(targetName)],
    rows: [
      ...keysOf(compass).map((key) => [key, plainNote(compass, key), ...cellsAt('key', key)]),
      ...parts.map(([scope, index]) => [partWord({ scope, index }, locale), '', ...cellsAt(scope, index)]),
    ],
  };
}

/** Note name in plain letters, `C#4`: every spreadsheet reads it whatever it takes the encoding for. */
function plainNote(compass: Compass, key: number): string {
  const note = noteNameOf(compass, key);
  return colourOf(compass, key) === 'sharp' ? note.replace('♯', '#') : note;
}

function columnsOf(readings: readonly Reading[]): readonly FigureColumn[] {
  return quantityNames.flatMap((quantity) => {
    const own = readings.filter((reading) => reading.quantity === quantity);
    const isAlways = ALWAYS.includes(quantity) && quantityOf(quantity).scope === 'key';
    const repeats = own.reduce((most, { repeat }) => Math.max(most, repeat), isAlways ? 1 : 0);
    return Array.from({ length: repeats }, (_, index) => index + 1).flatMap((repeat) => {
      const here = own.filter((reading) => reading.repeat === repeat);
      const column = (holds: FigureColumn['holds'], isWanted: boolean): readonly FigureColumn[] => (isWanted ? [{ holds, quantity, repeat }] : []);
      return [
        ...column('figure', true),
        ...column('figureRemark', here.some(({ remark }) => remark !== '')),
        ...column('figureBasis', here.some(({ basis }) => basis !== 'measured')),
      ];
    });
  });
}

function cellOf({ holds }: FigureColumn, { value, outcome, remark, basis }: Reading, locale: string): string | number {
  if (holds === 'figureRemark') return guarded(remark);
  if (holds === 'figureBasis') return basisWord(basis, locale);
  return outcome === null ? (value ?? '') : outcomeWord(outcome, locale);
}
