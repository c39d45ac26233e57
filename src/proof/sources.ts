import { evennessOperation, touchDiagnosisOperation, touchUncertaintyOperation, touchWeightOperation } from '#action';
import type { Block } from '#report';
import { sourceOf } from '#sources';
import { plainStringOperation, wireStrengthOperation, woundStringOperation } from '#strings';
import type { Say } from '#text';
import type { ProofInput } from './input.ts';
import { remarkTableOf } from './remarks.ts';

/** Sources of the operations a proof rests on, each once. */
const PROOF_SOURCES = [...new Set([touchWeightOperation, touchUncertaintyOperation, evennessOperation, touchDiagnosisOperation].flatMap(({ sources }) => sources))];

/** Sources of what is told of strings. */
const STRING_SOURCES = [plainStringOperation, woundStringOperation, wireStrengthOperation].flatMap(({ sources }) => sources);

/** A source with how far it was seen. */
function sourceWords(key: string, say: Say): string {
  const { title, access } = sourceOf(key);
  return access === 'practice' || access === 'own' ? say(`proof.source.${access}`) : say('proof.source', { title, access: say(`proof.access.${access}`) });
}

/** Sources with how far each was seen, the record the figures come from, and before them the remarks that are too many for the cover. */
export function sourcesOf(input: ProofInput): readonly Block[] {
  const { say } = input;
  return [
    ...remarkTableOf(input),
    { type: 'heading', level: 1, text: say('proof.sources') },
    { type: 'list', items: [...new Set([...PROOF_SOURCES, ...((input.scales ?? []).length === 0 ? [] : STRING_SOURCES)])].map((key) => sourceWords(key, say)) },
    { type: 'heading', level: 1, text: say('proof.record') },
    { type: 'paragraph', size: 'body', text: input.head === null ? say('proof.record.files') : say('proof.record.chain', { seq: input.head.seq, hash: input.head.hash }) },
    { type: 'paragraph', size: 'small', text: say('proof.record.limits') },
  ];
}
