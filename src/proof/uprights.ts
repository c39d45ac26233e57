import type { QuantityName } from '#instrument';
import { medianOf } from '#numerics';
import { type Block, type Cell, bare, cell } from '#report';
import type { ProofInput, ProvedState } from './input.ts';

const SHOWN = ['springTorqueGMm', 'damperG'] as const satisfies readonly QuantityName[];

/** Springs and dampers of an upright as found and as finished, as far as they were read; nothing of a grand. */
export function uprightPartsOf(input: ProofInput): readonly Block[] {
  const { say, instrument, regulations = [] } = input;
  const names = SHOWN.filter((name) => regulations.some(({ state }) => valuesOf(name, state, input).length > 0));
  if (instrument.kind !== 'upright' || names.length === 0) return [];
  const column = (label: string, width: number) => ({ label, align: 'start', width } as const);
  return [
    { type: 'heading', level: 2, text: say('proof.upright.spring') },
    { type: 'paragraph', size: 'small', text: say('proof.upright.how') },
    {
      type: 'table', strips: 1, rowHeads: true, caption: say('proof.upright.spring'),
      columns: [column(say('proof.upright.spring'), 3), ...regulations.map(({ state }) => column(say(`proof.state.${state}`), 3.4))],
      rows: names.map((name) => [cell(say(`quantity.${name}.name`)), ...regulations.map(({ state }) => spanCell(name, valuesOf(name, state, input), input))]),
    },
  ];
}

function valuesOf(name: QuantityName, state: ProvedState, { readings = [], cycle }: ProofInput): readonly number[] {
  return readings.flatMap((one) => (one.cycle === cycle && one.state === state && one.scope === 'key' && one.quantity === name && one.value !== null ? [one.value] : []));
}

function spanCell(name: (typeof SHOWN)[number], values: readonly number[], input: ProofInput): Cell {
  if (values.length === 0) return cell('–', 'quiet');
  const [unit, decimals] = name === 'damperG' ? ['g', 1] as const : ['g·mm', 0] as const;
  const shown = (value: number): string => `${bare(value, input, { decimals })}\u00A0${unit}`;
  return cell(input.say('proof.upright.cell', { read: values.length, median: shown(medianOf(values)), least: shown(Math.min(...values)), most: shown(Math.max(...values)) }));
}
