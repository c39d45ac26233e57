import { evennessOperation, touchDiagnosisOperation, touchUncertaintyOperation, touchWeightOperation } from '#action';
import type { Block } from '#report';
import { sourceOf } from '#sources';
import type { Say } from '#text';
import { CARE_SOURCES, careBlocksOf } from './care.ts';
import { type ProofInput, provedStates } from './input.ts';
import { leftOutOf } from './left-out.ts';
import { remarkTableOf } from './remarks.ts';
import { TONE_SOURCES } from './tone.ts';

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

/** Sources of the touch and the sound, what is left out, the record the figures come from, and before them the remarks that are too many for the cover. */
export function sourcesOf(input: ProofInput): readonly Block[] {
  const { say } = input;
  const sources = [...(provedStates(input).length === 0 ? [] : PROOF_SOURCES), ...(input.tone === undefined ? [] : TONE_SOURCES), ...(careBlocksOf(input).length === 0 ? [] : CARE_SOURCES)];
  return [
    ...remarkTableOf(input),
    ...(sources.length === 0 ? [] : [{ type: 'heading', level: 1, text: say('proof.sources') } as const, sourceList(sources, say)]),
    ...(provedStates(input).length === 0 ? [] : leftOutOf(input)),
    { type: 'heading', level: 1, text: say('proof.record') },
    { type: 'paragraph', size: 'body', text: input.head === null ? say('proof.record.files') : say('proof.record.chain', { seq: input.head.seq, hash: input.head.hash }) },
    ...(provedStates(input).length === 0 ? [] : [{ type: 'paragraph', size: 'small', text: say('proof.record.limits') } as const]),
  ];
}
