import type { AnalysedBearing, BearingFigures } from '#belly';
import { compassOf, noteNameOf } from '#instrument';
import { type Block, type Cell, bare, cell, opening } from '#report';
import type { ProofInput, ProvedBelly } from './input.ts';

const columns = [['key', 'end', 1.6], ['note', 'start', 1.9], ['source', 'start', 3], ['front', 'end', 2.2], ['rear', 'end', 2.2], ['total', 'end', 2.2], ['force', 'end', 2.2]] as const;
const derived = [['frontDeg', 'front', 2], ['rearDeg', 'rear', 2], ['totalDeg', 'total', 2], ['forceN', 'force', 1]] as const;

/** The bearing of every note that was read, one table a state. */
export function bearingTablesOf(bellies: readonly ProvedBelly[], input: ProofInput): readonly Block[] {
  const { say } = input;
  return bellies.flatMap(({ state, analysis }): readonly Block[] => {
    const title = say('proof.belly.table', { state: say(`proof.state.${state}`) });
    const read = analysis.notes.filter((note) => note.read !== undefined);
    return [
      { type: 'pageBreak' },
      { type: 'heading', level: 1, text: title },
      { type: 'paragraph', size: 'small', text: say('proof.belly.tableHow', { count: analysis.notes.length - read.length }) },
      {
        type: 'table', strips: 2, rowHeads: true, caption: title,
        columns: columns.map(([name, align, width]) => ({ label: name === 'key' || name === 'note' ? say(`proof.column.${name}`) : say(`proof.belly.column.${name}`), align, width })),
        rows: read.map((note) => rowOf(note, state, input)),
      },
    ];
  });
}

function rowOf(note: AnalysedBearing, state: ProvedBelly['state'], input: ProofInput): readonly Cell[] {
  const { say, instrument } = input;
  const { key, read, figures = {} } = note;
  const isLaid = read?.source === 'heights' && read.isEstimated;
  return [
    cell(String(key)), cell(noteNameOf(compassOf(instrument), key), 'strong'),
    read === undefined ? cell('–', 'quiet') : cell(`${isLaid ? '~ ' : ''}${say(`proof.belly.source.${read.source}`)}`, isLaid ? 'quiet' : 'plain'),
    ...derived.map(([output, name, decimals]) => figureCell(figures, { output, decimals, what: say(`belly.figure.${name}`), key, state }, input)),
  ];
}

interface Told {
  readonly output: (typeof derived)[number][0];
  readonly decimals: number;
  readonly what: string;
  readonly key: number;
  readonly state: ProvedBelly['state'];
}

/** A negative angle is one at which the string lifts. */
function figureCell(figures: BearingFigures, { decimals, ...name }: Told, input: ProofInput): Cell {
  const value = figures[name.output];
  if (value === undefined) return cell('–', 'quiet');
  return opening(cell(bare(value, input, { decimals }), value < 0 && name.output !== 'forceN' ? 'flag' : 'plain'), { of: 'bearing', ...name });
}
