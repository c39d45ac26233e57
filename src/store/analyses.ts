import { type Analysis, type AnalysisTask, canonicalJson, soundOf } from '#workshop';
import type { Recording } from '#instrument';
import { and, desc, eq, inArray } from 'drizzle-orm';
import { cardsOf } from './cards/card.ts';
import type { Bench, Database, Transaction } from './database.ts';
import { chainOf } from './log/chain.ts';
import { analysis } from './schema.ts';

/** Every result worked out of the sounds of an instrument's standing recordings, the latest first. */
export async function listAnalyses({ db }: Bench, id: string): Promise<readonly Analysis[]> {
  const chain = await chainOf(db, id);
  const hashes = [...new Set((await cardsOf<Recording>(db, chain, 'recording')).map((recording) => soundOf(recording).hash))];
  if (hashes.length === 0) return [];
  const rows = await db.select().from(analysis).where(and(eq(analysis.workshop, chain.workshop), inArray(analysis.hash, hashes))).orderBy(desc(analysis.madeAt));
  return rows.map(({ hash, method, version, input, answer, madeAt }) => ({ hash, method, version, input: JSON.parse(input) as Analysis['input'], answer, madeAt: madeAt.toISOString() }));
}

/** True when exactly this was worked out before. */
export async function isWorkedOut(db: Database | Transaction, workshop: string, { hash, method, version, input }: AnalysisTask): Promise<boolean> {
  const [row] = await db.select({ hash: analysis.hash }).from(analysis)
    .where(and(eq(analysis.workshop, workshop), eq(analysis.hash, hash), eq(analysis.method, method), eq(analysis.version, version), eq(analysis.input, canonicalJson(input))));
  return row !== undefined;
}

/** Keeps a result; one worked out again takes the place of the one before. */
export async function keepAnalysis(tx: Transaction, workshop: string, { hash, method, version, input }: AnalysisTask, answer: unknown, madeAt: Date): Promise<void> {
  await tx.insert(analysis).values({ workshop, hash, method, version, input: canonicalJson(input), answer, madeAt })
    .onConflictDoUpdate({ target: [analysis.workshop, analysis.hash, analysis.method, analysis.version, analysis.input], set: { answer, madeAt } });
}
