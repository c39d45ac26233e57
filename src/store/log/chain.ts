import { and, eq } from 'drizzle-orm';
import { StoreFailure } from '../bench-store.ts';
import type { Database, Transaction } from '../database.ts';
import { chainHead } from '../schema.ts';

/** One instrument's chain and where it ends. */
export interface Chain {
  readonly workshop: string;
  readonly instrument: string;
  readonly seq: number;
  readonly hash: string;
}

/** The chain of an instrument as it stands. */
export async function chainOf(db: Database | Transaction, instrument: string): Promise<Chain> {
  return found(await db.select().from(chainHead).where(eq(chainHead.instrument, instrument)), instrument);
}

/**
 * The chain of an instrument, held until the transaction ends: whoever writes next waits here, so nothing is lost between two writers.
 * Whatever is read to decide by is read in later statements: in a join with this one it would be as it was before the wait.
 */
export async function lockChain(tx: Transaction, instrument: string): Promise<Chain> {
  return found(await tx.select().from(chainHead).where(eq(chainHead.instrument, instrument)).for('update'), instrument);
}

/** Begins the chain of a new instrument. */
export async function beginChain(tx: Transaction, workshop: string, instrument: string): Promise<Chain> {
  const chain = { workshop, instrument, seq: 0, hash: '' };
  await tx.insert(chainHead).values(chain);
  return chain;
}

/** Moves the end of the chain to a new event. */
export async function moveHead(tx: Transaction, chain: Chain, end: { readonly seq: number; readonly hash: string; readonly at: Date }): Promise<void> {
  await tx.update(chainHead).set(end).where(and(eq(chainHead.workshop, chain.workshop), eq(chainHead.instrument, chain.instrument)));
}

function found(rows: readonly Chain[], instrument: string): Chain {
  const [chain] = rows;
  if (chain === undefined) throw new StoreFailure('notFound', `There is no instrument ${instrument}.`);
  return chain;
}
