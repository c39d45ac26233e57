import { bookOf } from '#workshop';
import type { Transaction } from '../database.ts';
import { type Chain, lockChain } from '../log/chain.ts';
import { chainHead } from '../schema.ts';

/** The chain of what belongs to a whole workshop, held until the transaction ends; begun by whoever writes first. */
export async function lockBook(tx: Transaction, workshop: string): Promise<Chain> {
  await tx.insert(chainHead).values({ workshop, instrument: bookOf(workshop), seq: 0, hash: '' }).onConflictDoNothing();
  return await lockChain(tx, bookOf(workshop));
}
