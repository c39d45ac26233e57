import { evennessOperation, touchDiagnosisOperation, touchUncertaintyOperation, touchWeightOperation } from '#action';
import type { Block } from '#report';
import { sourceOf } from '#sources';
import type { Say } from '#text';
import { type ProofInput, provedStates } from './input.ts';
import { remarkTableOf } from './remarks.ts';

/** Sources of the operations a proof of the touch rests on. */
const PROOF_SOURCES = [touchWeightOperation, touchUncertaintyOperation, evennessOperation, touchDiagnosisOperation].flatMap(({ sources }) => sources);

/** A source with how far it was seen. */
function sourceWords(key: string, say: Say): string {
  const { title, access } = sourceOf(key);
  return access === 'practice' || access === 'own' ? say(`proof.source.${access}`) : say('proof.source', { title, access: say(`proof.access.${access}`) });
}

/** Sources, each once, with how far each was seen. */
export function sourceList(keys: readonly string[], say: Say): Block {
  return { type: 'list', items: [...new Set(keys)].map((key) => sourceWords(key, say)) };
}

/** Sources of the touch, the record the figures come from, and before them the remarks that are too many for the cover. */
export function sourcesOf(input: ProofInput): readonly Block[] {
  const { say } = input;
  return [
    ...remarkTableOf(input),
    ...(provedStates(input).length === 0 ? [] : [{ type: 'heading', level: 1, text: say('proof.sources') } as const, sourceList(PROOF_SOURCES, say)]),
    { type: 'heading', level: 1, text: say('proof.record') },
    { type: 'paragraph', size: 'body', text: input.head === null ? say('proof.record.files') : say('proof.record.chain', { seq: input.head.seq, hash: input.head.hash }) },
    ...(provedStates(input).length === 0 ? [] : [{ type: 'paragraph', size: 'small', text: say('proof.record.limits') } as const]),
  ];
}
