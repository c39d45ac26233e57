import { type BenchStore, SHOP, openStore } from '#store';
import { randomUUID } from 'node:crypto';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, afterEach, beforeAll, describe, expect, it, vi } from 'vitest';
import { type JobRunner, type RunnerOptions, startJobs } from './runner.ts';

const threadFile = new URL('./testing/odd-thread.mjs', import.meta.url);
const PATIENCE = { timeout: 60_000, interval: 50 };
const [ANSWER, CRASH, HANG, REFUSE] = [0, 1, 2, 3];

describe('work in the background', () => {
  let dataDir = '';
  let store: BenchStore;
  let piano = '';
  let runner: JobRunner | undefined;
  const failures: unknown[] = [];
  const open = () => openStore({ dataDir, clock: () => new Date(), newId: randomUUID });
  beforeAll(async () => {
    dataDir = await mkdtemp(path.join(tmpdir(), 'wrestplank-jobs-'));
    store = await open();
    piano = (await store.addPiano(SHOP, { name: 'Worked out', kind: 'grand' }, 'p1')).id;
  });
  afterEach(async () => {
    await runner?.stop();
    runner = undefined;
    failures.length = 0;
  });
  afterAll(async () => {
    await store.close();
    await rm(dataDir, { recursive: true, force: true });
  });

  const start = (rest: Partial<RunnerOptions> = {}): void => { runner = startJobs({ store, name: 'test', threads: 1, pollMs: 20, threadFile, onFailure: (error) => failures.push(error), ...rest }); };
  async function* sound(act: number): AsyncIterable<Uint8Array> {
    yield await Promise.resolve(Buffer.concat([Buffer.from('RIFF0000WAVE'), Buffer.from([act]), Buffer.from(randomUUID())]));
  }
  /** Puts a sound in line that makes the thread act so, and answers its job. */
  const ask = async (act: number): Promise<string> => {
    const file = await store.keepRecording(sound(act));
    const { id } = await store.addRecording(piano, { cycle: 1, state: 'found', contents: 'note', file, key: 7 }, 'p1');
    return (await store.askAnalysis(piano, [id]))[0]?.id ?? '';
  };
  const jobOf = async (id: string) => (await store.listJobs(piano)).find((job) => job.id === id);
  const become = (id: string, wanted: object) => vi.waitFor(async () => { expect(await jobOf(id)).toMatchObject(wanted); }, PATIENCE);

  it('is done by a thread that is given the sound and what is told of it', async () => {
    start();
    await become(await ask(ANSWER), { status: 'done', progress: 1 });
    expect((await store.listAnalyses(piano))[0]?.answer).toEqual({ heard: 49, key: 7 });
  });

  it('is begun at once when it is put in line, however long an idle thread would wait', async () => {
    start({ pollMs: 3_600_000 });
    await become(await ask(ANSWER), { status: 'done' });
    await become(await ask(ANSWER), { status: 'done' });
  });

  it('goes on after a thread that crashes, and gives the job up after three times', async () => {
    start();
    const bad = await ask(CRASH);
    const good = await ask(ANSWER);
    await become(good, { status: 'done' });
    await become(bad, { status: 'failed', attempts: 3, failure: { reason: 'crashed' } });
    expect(failures).toHaveLength(3);
  });

  it('says what is wrong with a sound, and does not try again', async () => {
    start();
    await become(await ask(REFUSE), { status: 'failed', attempts: 1, failure: { reason: 'unreadable', issues: [{ path: 'file', allowed: 'a sound' }] } });
  });

  it('ends a thread whose job was called off, and goes on', async () => {
    start({ leaseMs: 300 });
    const hanging = await ask(HANG);
    await become(hanging, { status: 'running', progress: 0.5 });
    await store.cancelJob(piano, hanging);
    await become(await ask(ANSWER), { status: 'done' });
    expect(await jobOf(hanging)).toMatchObject({ status: 'cancelled' });
  });

  it('ends a job that takes longer than one may', async () => {
    start({ mostMs: 200 });
    await become(await ask(HANG), { status: 'failed', failure: { reason: 'tooLong' } });
  });

  it('puts back what was under way when it stops, and takes it up at the next start', async () => {
    start();
    const hanging = await ask(HANG);
    await become(hanging, { status: 'running' });
    await runner?.stop();
    expect(await jobOf(hanging)).toMatchObject({ status: 'waiting', attempts: 0 });
    await store.cancelJob(piano, hanging);
    const left = await ask(ANSWER);
    await store.claimJob('a process that was killed', 3_600_000);
    await store.close();
    store = await open();
    start();
    await become(left, { status: 'done' });
  });
});
