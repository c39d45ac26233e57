import type { Block } from '#report';
import { type ProofInput, proofParts, provedParts } from './input.ts';

/** Parts nothing was noted of, so that nobody takes their absence for a clean bill; nothing where all were, or none at all. */
export function leftOutOf(input: ProofInput): readonly Block[] {
  const { say } = input;
  const parts = provedParts(input);
  const missing = proofParts.filter((part) => !parts[part]);
  if (missing.length === 0 || missing.length === proofParts.length) return [];
  return [{ type: 'note', text: say('proof.leftOut', { parts: missing.map((part) => say(`proof.part.${part}`)).join(', ') }) }];
}
