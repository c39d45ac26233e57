import { type ReadingBatchAnswer, canonicalJson } from '#workshop';
import { and, eq } from 'drizzle-orm';
import { StoreFailure } from '../bench-store.ts';
import { hashOf } from '../log/event-text.ts';
import { send } from '../schema.ts';
import type { Sight } from '../write.ts';
import type { Batch } from './understand.ts';

/** The answer a batch was given when it was sent before: the line broke, and the writer could not know. */
export async function answeredBefore({ tx, chain }: Sight, batch: Batch): Promise<ReadingBatchAnswer | undefined> {
  const { sendId } = batch;
  if (sendId === undefined) return undefined;
  const [row] = await tx.select().from(send).where(and(eq(send.workshop, chain.workshop), eq(send.instrument, chain.instrument), eq(send.sendId, sendId)));
  if (row === undefined) return undefined;
  if (row.digest === digestOf(batch)) return row.answer as ReadingBatchAnswer;
  throw new StoreFailure('conflict', 'Another batch was sent under this name; nothing was written.', [{ code: 'duplicate', path: 'sendId', given: sendId, allowed: 'a name of its own for each batch' }]);
}

/** Keeps an answer for the case that its batch is sent again. */
export async function keepAnswer({ tx, chain }: Sight, batch: Batch, answer: ReadingBatchAnswer): Promise<void> {
  if (batch.sendId === undefined) return;
  const { workshop, instrument } = chain;
  await tx.insert(send).values({ workshop, instrument, sendId: batch.sendId, digest: digestOf(batch), seq: answer.seq, answer });
}

function digestOf(batch: Batch): string {
  return hashOf(canonicalJson(batch));
}
