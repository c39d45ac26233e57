import { availableParallelism } from 'node:os';
import type { BenchStore, ClaimedJob } from '#store';
import { type Bell, newBell } from './bell.ts';
import { type Outcome, type WorkThread, workThread } from './thread.ts';

export interface RunnerOptions {
  readonly store: BenchStore;
  /** Names this process among all that take from the same line. */
  readonly name: string;
  /** Threads at work at a time; left out: one fewer than the machine has cores. */
  readonly threads?: number;
  /** How long an idle thread waits before it looks again, unless work is put in line by this process meanwhile; left out: a minute where no other process can put any, else five seconds. */
  readonly pollMs?: number;
  /** How long a job stays with a worker that is not heard of. */
  readonly leaseMs?: number;
  /** How long one job may take. */
  readonly mostMs?: number;
  /** Another thread than the program's own, for tests. */
  readonly threadFile?: URL;
  /** Told of failures that are the program's own. */
  readonly onFailure?: (error: unknown) => void;
}

export interface JobRunner {
  /** Calls off what is under way and puts it back in line. */
  stop(): Promise<void>;
}

interface Desk {
  readonly store: BenchStore;
  readonly thread: WorkThread;
  readonly worker: string;
  readonly stopping: AbortSignal;
  readonly leaseMs: number;
  readonly mostMs: number;
  readonly onFailure: (error: unknown) => void;
}

const ALONE_POLL_MS = 60_000;
const SHARED_POLL_MS = 5000;

/** Takes jobs from the line until told to stop. A failing job, thread or database never ends it. */
export function startJobs({ store, name, threads = Math.max(1, availableParallelism() - 1), pollMs = store.kind === 'embedded' ? ALONE_POLL_MS : SHARED_POLL_MS, leaseMs = 30_000, mostMs = 900_000, threadFile, onFailure = () => undefined }: RunnerOptions): JobRunner {
  const stopping = new AbortController();
  const bell = newBell();
  const endWaking = store.onWork(bell.ring);
  const desks = Array.from({ length: threads }, (_, index): Desk => ({ store, thread: workThread(threadFile), worker: `${name}/${String(index + 1)}`, stopping: stopping.signal, leaseMs, mostMs, onFailure }));
  const released = store.kind === 'embedded' ? store.releaseJobs(null).catch(onFailure) : Promise.resolve();
  const loops = desks.map(async (desk) => {
    await released;
    await takeJobs(desk, bell, pollMs);
  });
  return {
    stop: async () => {
      endWaking();
      stopping.abort();
      await Promise.all(loops);
      await Promise.all(desks.map(({ thread }) => thread.end()));
    },
  };
}

async function takeJobs(desk: Desk, bell: Bell, pollMs: number): Promise<void> {
  while (!desk.stopping.aborted) {
    const rings = bell.rings();
    const isIdle = await takeOne(desk).catch((error: unknown) => {
      desk.onFailure(error);
      return true;
    });
    if (isIdle) await bell.next(rings, pollMs, desk.stopping);
  }
}

/** Answers true when the line was empty. */
async function takeOne(desk: Desk): Promise<boolean> {
  const { store, worker, leaseMs, stopping } = desk;
  const job = await store.claimJob(worker, leaseMs);
  if (job === undefined) return true;
  const outcome = await workedOut(desk, job);
  if (stopping.aborted && outcome.kind === 'calledOff') await store.releaseJobs(worker);
  else await conclude(desk, job, outcome);
  return false;
}

/** Works one job out, saying now and then how far it has come; called off when it is no longer this worker's, or takes too long. */
async function workedOut({ store, thread, worker, stopping, leaseMs, mostMs }: Desk, job: ClaimedJob): Promise<Outcome | { readonly kind: 'tooLong' }> {
  const lost = new AbortController();
  const late = AbortSignal.timeout(mostMs);
  let progress = 0;
  const beat = setInterval(() => {
    store.reportJob(job.id, worker, progress, leaseMs).then((isOurs) => { if (!isOurs) lost.abort(); }, () => undefined);
  }, Math.min(1000, leaseMs / 3));
  try {
    const bytes = await bytesOf(store, job.task.hash);
    const outcome = await thread.run({ task: job.task, bytes }, (value) => { progress = value; }, AbortSignal.any([stopping, lost.signal, late]));
    return outcome.kind === 'calledOff' && late.aborted && !stopping.aborted && !lost.signal.aborted ? { kind: 'tooLong' } : outcome;
  } catch (error) {
    return { kind: 'crashed', error };
  } finally {
    clearInterval(beat);
  }
}

async function conclude({ store, worker, onFailure }: Desk, job: ClaimedJob, outcome: Outcome | { readonly kind: 'tooLong' }): Promise<void> {
  switch (outcome.kind) {
    case 'answer':
      await store.finishJob(job.id, worker, outcome.answer);
      break;
    case 'refused':
      await store.failJob(job.id, worker, { reason: 'unreadable', issues: [...outcome.issues] }, false);
      break;
    case 'tooLong':
      await store.failJob(job.id, worker, { reason: 'tooLong', issues: [] }, false);
      break;
    case 'crashed':
      onFailure(outcome.error);
      await store.failJob(job.id, worker, { reason: 'crashed', issues: [] }, true);
      break;
    case 'calledOff':
      break;
  }
}

/** All bytes of a sound, in memory of their own, to be handed over to the thread. */
async function bytesOf(store: BenchStore, hash: string): Promise<Uint8Array> {
  const { byteCount, pieces } = await store.readRecording(hash);
  const bytes = new Uint8Array(byteCount);
  let at = 0;
  for await (const piece of pieces) {
    bytes.set(piece, at);
    at += piece.byteLength;
  }
  return bytes;
}
