import type { Reading } from '#instrument';
import type { Change } from '#workshop';
import { projectCard } from './cards/card.ts';
import type { Transaction } from './database.ts';
import type { Chain } from './log/chain.ts';
import { type Move, addReadings, moveStanding } from './readings/rows.ts';

/** Brings what stands now in line with an event: cards one by one, readings all at once. */
export async function project(tx: Transaction, chain: Chain, seq: number, changes: readonly Change[], isNew: boolean): Promise<void> {
  for (const [index, change] of changes.entries()) {
    if (change.entity !== 'reading') await projectCard(tx, chain, change, { seq, index });
  }
  const moves = changes.filter(({ entity }) => entity === 'reading').map(({ before, after }): Move => ({ before: before as Reading | null, after: after as Reading | null }));
  if (moves.length === 0) return;
  await (isNew ? addReadings(tx, chain, seq, moves) : moveStanding(tx, chain, moves));
}
