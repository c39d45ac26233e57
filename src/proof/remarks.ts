import { type Reading, compassOf, noteNameOf, quantityOf } from '#instrument';
import { type Block, cell } from '#report';
import { type ProofInput, provedStates } from './input.ts';

/** So many remarks are told in a line or two on the cover; more of them make a table behind the method. */
const FEW = 8;

/** A few remarks made at the keys, a line for each state; nothing where there are none, or too many. */
export function fewRemarksOf(input: ProofInput): readonly Block[] {
  const { say, instrument } = input;
  const remarked = remarkedOf(input);
  if (remarked.length === 0 || remarked.length > FEW) return [];
  const items = provedStates(input).flatMap(({ state }) => {
    const remarks = remarked.filter((reading) => reading.state === state).map(({ index, remark }) => say('proof.remarks.at', { key: noteNameOf(compassOf(instrument), index), remark }));
    return remarks.length === 0 ? [] : [say('proof.remarks.of', { state: say(`proof.state.${state}`), remarks: remarks.join('; ') })];
  });
  return [{ type: 'heading', level: 1, text: say('proof.remarks') }, { type: 'list', items }];
}

/** Many remarks made at the keys, as a table; nothing where they are few. */
export function remarkTableOf(input: ProofInput): readonly Block[] {
  const { say, instrument } = input;
  const remarked = remarkedOf(input);
  if (remarked.length <= FEW) return [];
  const column = (name: 'key' | 'state' | 'remark', width: number) => ({ label: say(`proof.remarks.${name}`), align: 'start', width } as const);
  return [
    { type: 'heading', level: 1, text: say('proof.remarks') },
    {
      type: 'table', strips: 1, rowHeads: true, caption: say('proof.remarks'), columns: [column('key', 1), column('state', 2), column('remark', 8)],
      rows: remarked.map(({ index, state, remark }) => [cell(noteNameOf(compassOf(instrument), index)), cell(say(`proof.state.${state === 'finished' ? 'finished' : 'found'}`)), cell(remark)]),
    },
  ];
}

/** Remarks made at the keys of the proved states, bass to treble. */
function remarkedOf(input: ProofInput): readonly Reading[] {
  const { readings = [], cycle } = input;
  const proved = new Set<string>(provedStates(input).map(({ state }) => state));
  return readings
    .filter((reading) => reading.cycle === cycle && reading.scope === 'key' && quantityOf(reading.quantity).part === 'touch' && proved.has(reading.state) && reading.remark.trim() !== '')
    .sort((a, b) => a.index - b.index);
}
