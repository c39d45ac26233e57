import { type Block, papersInFull } from '#report';
import type { ProofInput } from './input.ts';

/** What papers hang on and what the rules say of each shipment; nothing where nothing was noted, and the cover says so. */
export function papersOf(input: ProofInput): readonly Block[] {
  const { papers, say } = input;
  return papers === undefined ? [] : [{ type: 'pageBreak' }, { type: 'heading', level: 1, text: say('proof.papers.title') }, ...papersInFull(papers, input)];
}
