import type { Instrument, Recording } from '#instrument';
import { type Job, type JobFailure, analysisTaskOf, canonicalJson } from '#workshop';
import { and, asc, eq, inArray, lt, or, sql } from 'drizzle-orm';
import { isWorkedOut, keepAnalysis } from './analyses.ts';
import { type ClaimedJob, DEMO, StoreFailure } from './bench-store.ts';
import { cardThere } from './cards/card.ts';
import type { Bench, Transaction } from './database.ts';
import { chainOf } from './log/chain.ts';
import { job } from './schema.ts';

/** How often a job is begun before it is given up. */
export const MOST_ATTEMPTS = 3;

type Row = typeof job.$inferSelect;
const OPEN = ['waiting', 'running'] as const;

/**
 * Puts recordings in line to be worked out. What was worked out before is left, unless asked for `again`;
 * what stands in line already stays there once. Answers the jobs that now stand in line for these recordings.
 */
export async function askAnalysis(bench: Bench, id: string, recordingIds: readonly string[], again = false): Promise<readonly Job[]> {
  return await bench.db.transaction(async (tx) => {
    const chain = await chainOf(tx, id);
    const instrument = await cardThere<Instrument>(tx, chain, 'instrument', id);
    const asked: Job[] = [];
    for (const recordingId of recordingIds) {
      const task = analysisTaskOf(await cardThere<Recording>(tx, chain, 'recording', recordingId), instrument);
      if (!again && (await isWorkedOut(tx, chain.workshop, task))) continue;
      asked.push(await putInLine(tx, { workshop: chain.workshop, instrument: id, id: bench.newId(), recordingId, task }));
    }
    return asked;
  });
}

async function putInLine(tx: Transaction, given: Pick<Row, 'workshop' | 'instrument' | 'id' | 'recordingId' | 'task'>): Promise<Job> {
  const work = canonicalJson(given.task);
  await tx.insert(job).values({ ...given, work, status: 'waiting', attempts: 0, progress: 0, failure: null, worker: null }).onConflictDoNothing();
  const [row] = await tx.select().from(job).where(and(eq(job.workshop, given.workshop), eq(job.work, work), inArray(job.status, [...OPEN])));
  if (row === undefined) throw new Error('a job in line is not there');
  return told(row);
}

/** The jobs of an instrument, in the order they were asked for. */
export async function listJobs({ db }: Bench, id: string): Promise<readonly Job[]> {
  const { workshop } = await chainOf(db, id);
  return (await db.select().from(job).where(and(eq(job.workshop, workshop), eq(job.instrument, id))).orderBy(asc(job.askedAt), asc(job.id))).map(told);
}

/** Takes a job out of the line, or from the worker that has it. One that came to its end stays as it is. */
export async function cancelJob({ db }: Bench, id: string, jobId: string): Promise<Job> {
  const { workshop } = await chainOf(db, id);
  const own = and(eq(job.workshop, workshop), eq(job.instrument, id), eq(job.id, jobId));
  await db.update(job).set({ status: 'cancelled', worker: null, leasedUntil: null }).where(and(own, inArray(job.status, [...OPEN])));
  const [row] = await db.select().from(job).where(own);
  if (row === undefined) throw new StoreFailure('notFound', `There is no job ${jobId}.`);
  return told(row);
}

/** Leases the next job to a worker, those of the demonstration last: one that waits, or one whose worker has not been heard of since its lease ended. Two workers never get the same. */
export async function claimJob({ db }: Bench, worker: string, leaseMs: number): Promise<ClaimedJob | undefined> {
  return await db.transaction(async (tx) => {
    await tx.update(job).set({ status: 'failed', failure: { reason: 'crashed', issues: [] }, worker: null, leasedUntil: null })
      .where(and(eq(job.status, 'running'), lt(job.leasedUntil, sql`now()`), sql`${job.attempts} >= ${MOST_ATTEMPTS}`));
    const [next] = await tx.select().from(job)
      .where(or(eq(job.status, 'waiting'), and(eq(job.status, 'running'), lt(job.leasedUntil, sql`now()`))))
      .orderBy(sql`${job.workshop} = ${DEMO}`, asc(job.askedAt), asc(job.id)).limit(1).for('update', { skipLocked: true });
    if (next === undefined) return undefined;
    const attempts = next.attempts + 1;
    await tx.update(job).set({ status: 'running', attempts, progress: 0, worker, leasedUntil: leaseEnd(leaseMs) }).where(ofRow(next));
    return { id: next.id, task: next.task, attempts };
  });
}

/** Says how far a job has come and makes its lease longer. False where it is no longer this worker's: cancelled, or taken over. */
export async function reportJob({ db }: Bench, id: string, worker: string, progress: number, leaseMs: number): Promise<boolean> {
  const rows = await db.update(job).set({ progress, leasedUntil: leaseEnd(leaseMs) }).where(held(id, worker)).returning({ id: job.id });
  return rows.length > 0;
}

/** Keeps what a job came to. False, and nothing kept, where the job is no longer this worker's. */
export async function finishJob({ db, clock }: Bench, id: string, worker: string, answer: unknown): Promise<boolean> {
  return await db.transaction(async (tx) => {
    const [row] = await tx.update(job).set({ status: 'done', progress: 1, failure: null, worker: null, leasedUntil: null }).where(held(id, worker)).returning();
    if (row === undefined) return false;
    await keepAnalysis(tx, row.workshop, row.task, answer, clock());
    return true;
  });
}

/** Says that a job came to nothing. One that may go better another time goes back in line, as often as a job may be begun. */
export async function failJob({ db }: Bench, id: string, worker: string, failure: JobFailure, mayRetry: boolean): Promise<void> {
  const again = mayRetry ? sql`case when ${job.attempts} < ${MOST_ATTEMPTS} then 'waiting' else 'failed' end` : sql`'failed'`;
  await db.update(job).set({ status: again, failure, worker: null, leasedUntil: null }).where(held(id, worker));
}

/** Gives jobs back that a worker did not come to the end of; null: every job, when no other process can be at work. */
export async function releaseJobs({ db }: Bench, worker: string | null): Promise<void> {
  await db.update(job).set({ status: 'waiting', attempts: sql`greatest(${job.attempts} - 1, 0)`, progress: 0, worker: null, leasedUntil: null })
    .where(and(eq(job.status, 'running'), worker === null ? undefined : eq(job.worker, worker)));
}

const leaseEnd = (leaseMs: number) => sql`now() + ${leaseMs} * interval '1 millisecond'`;
const ofRow = ({ workshop, id }: Pick<Row, 'workshop' | 'id'>) => and(eq(job.workshop, workshop), eq(job.id, id));
const held = (id: string, worker: string) => and(eq(job.id, id), eq(job.worker, worker), eq(job.status, 'running'));

function told({ id, recordingId, task, status, attempts, progress, failure, askedAt }: Row): Job {
  return { id, recordingId, task, status, attempts, progress, failure, askedAt: askedAt.toISOString() };
}
