import { evennessOperation, touchDiagnosisOperation, touchUncertaintyOperation, touchWeightOperation } from '#action';
import { compassOf, noteNameOf, quantityOf } from '#instrument';
import { type Block, cell } from '#report';
import { sourceOf } from '#sources';
import type { Say } from '#text';
import { type ProofInput, provedStates } from './input.ts';

/** Sources of the operations a proof rests on, each once. */
const PROOF_SOURCES = [...new Set([touchWeightOperation, touchUncertaintyOperation, evennessOperation, touchDiagnosisOperation].flatMap(({ sources }) => sources))];

/** A source with how far it was seen. */
function sourceWords(key: string, say: Say): string {
  const { title, access } = sourceOf(key);
  return access === 'practice' || access === 'own' ? say(`proof.source.${access}`) : say('proof.source', { title, access: say(`proof.access.${access}`) });
}

/** Sources with how far each was seen, remarks at the keys, and the record the figures come from. */
export function sourcesOf(input: ProofInput): readonly Block[] {
  const { say } = input;
  return [
    ...remarksOf(input),
    { type: 'heading', level: 1, text: say('proof.sources') },
    { type: 'list', items: PROOF_SOURCES.map((key) => sourceWords(key, say)) },
    { type: 'heading', level: 1, text: say('proof.record') },
    { type: 'paragraph', size: 'body', text: input.head === null ? say('proof.record.files') : say('proof.record.chain', { seq: input.head.seq, hash: input.head.hash }) },
    { type: 'paragraph', size: 'small', text: say('proof.record.limits') },
  ];
}

function remarksOf(input: ProofInput): readonly Block[] {
  const { readings = [], cycle, say, instrument } = input;
  const proved = new Set<string>(provedStates(input).map(({ state }) => state));
  const remarks = readings
    .filter((reading) => reading.cycle === cycle && reading.scope === 'key' && quantityOf(reading.quantity).part === 'touch' && proved.has(reading.state) && reading.remark.trim() !== '')
    .sort((a, b) => a.index - b.index);
  if (remarks.length === 0) return [];
  const column = (name: 'key' | 'state' | 'remark', width: number) => ({ label: say(`proof.remarks.${name}`), align: 'start', width } as const);
  return [
    { type: 'heading', level: 1, text: say('proof.remarks') },
    {
      type: 'table', strips: 1, rowHeads: true, caption: say('proof.remarks'), columns: [column('key', 1), column('state', 2), column('remark', 8)],
      rows: remarks.map(({ index, state, remark }) => [cell(noteNameOf(compassOf(instrument), index)), cell(say(`proof.state.${state === 'finished' ? 'finished' : 'found'}`)), cell(remark)]),
    },
  ];
}
