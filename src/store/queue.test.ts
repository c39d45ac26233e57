import type { AnalysisTask } from '#workshop';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { DEMO, SHOP } from './index.ts';
import { MOST_ATTEMPTS } from './queue.ts';
import { type TestBook, engines } from './testing/engines.ts';
import { failureOf } from './testing/failure.ts';

const LEASE_MS = 60_000;
/** A lease that is over before anybody looks. */
const NO_TIME_MS = -1;

async function* sound(salt: string): AsyncIterable<Uint8Array> {
  yield await Promise.resolve(Buffer.from(`RIFF0000WAVE${salt}`));
}

describe.each(engines)('the line of work in the background ($name)', ({ open }) => {
  let book: TestBook;
  let piano = '';
  let count = 0;
  beforeAll(async () => void (book = await open()));
  afterAll(() => book.remove());
  const store = () => book.store();
  beforeEach(async () => {
    await book.behindItsBack('delete from job', 'delete from analysis');
    piano = (await store().addPiano(SHOP, { name: 'Worked out', kind: 'grand' }, 'p1')).id;
  });
  const recorded = async (): Promise<string> => {
    const file = await store().keepRecording(sound(String((count += 1))));
    return (await store().addRecording(piano, { cycle: 1, state: 'found', contents: 'note', file, key: 1 }, 'p1')).id;
  };
  const asked = async (recordings: number): Promise<readonly string[]> => {
    const ids: string[] = [];
    for (let at = 0; at < recordings; at += 1) ids.push(await recorded());
    return (await store().askAnalysis(piano, ids)).map(({ id }) => id);
  };
  const firstRecording = async (): Promise<string> => (await store().listJobs(piano))[0]?.recordingId ?? '';
  const statuses = async () => (await store().listJobs(piano)).map(({ status }) => status);

  it('gives each job to one worker alone, in the order they were asked for', async () => {
    const ids = await asked(6);
    const claims = await Promise.all(['a', 'b', 'c', 'd', 'e', 'f', 'g', 'h'].map((worker) => store().claimJob(worker, LEASE_MS)));
    const got = claims.flatMap((claim) => (claim === undefined ? [] : [claim.id]));
    expect(got.toSorted()).toEqual(ids.toSorted());
    expect(await store().claimJob('late', LEASE_MS)).toBeUndefined();
  });

  it('keeps what a job came to, and does not work the same out twice unless asked', async () => {
    const [id = ''] = await asked(1);
    const recordingId = await firstRecording();
    await store().claimJob('a', LEASE_MS);
    expect(await store().reportJob(id, 'a', 0.4, LEASE_MS)).toBe(true);
    expect(await store().listJobs(piano)).toMatchObject([{ status: 'running', progress: 0.4, attempts: 1 }]);
    expect(await store().finishJob(id, 'a', { f0Hz: 27.5 })).toBe(true);
    expect(await store().listAnalyses(piano)).toMatchObject([{ method: 'tone-note', answer: { f0Hz: 27.5 } }]);
    expect(await store().askAnalysis(piano, [recordingId])).toEqual([]);
    const [again] = await store().askAnalysis(piano, [recordingId], true);
    expect((await store().askAnalysis(piano, [recordingId], true)).map((job) => job.id)).toEqual([again?.id]);
    await store().claimJob('a', LEASE_MS);
    await store().finishJob(again?.id ?? '', 'a', { f0Hz: 27.6 });
    expect((await store().listAnalyses(piano)).map(({ answer }) => answer)).toEqual([{ f0Hz: 27.6 }]);
    expect(await store().audit(piano)).toMatchObject({ whole: true, events: 2 });
  });

  it('works out anew when another key is told', async () => {
    const [id = ''] = await asked(1);
    const recordingId = await firstRecording();
    await store().claimJob('a', LEASE_MS);
    await store().finishJob(id, 'a', {});
    await store().changeRecording(piano, recordingId, { key: 2 }, 'p1');
    expect((await store().askAnalysis(piano, [recordingId])).map(({ task }: { task: AnalysisTask }) => task.input.key)).toEqual([2]);
  });

  it('takes a job from a worker that is not heard of, and keeps nothing of what that one says later', async () => {
    const [id = ''] = await asked(1);
    await store().claimJob('gone', NO_TIME_MS);
    expect(await store().claimJob('next', LEASE_MS)).toMatchObject({ id, attempts: 2 });
    expect(await store().reportJob(id, 'gone', 0.9, LEASE_MS)).toBe(false);
    expect(await store().finishJob(id, 'gone', { from: 'gone' })).toBe(false);
    expect(await store().listAnalyses(piano)).toEqual([]);
    expect(await store().finishJob(id, 'next', { from: 'next' })).toBe(true);
  });

  it('gives a job up after so many attempts, whether workers say so or fall silent', async () => {
    const [told = '', silent = ''] = await asked(2);
    for (let attempt = 1; attempt <= MOST_ATTEMPTS; attempt += 1) {
      expect(await store().claimJob('a', LEASE_MS)).toMatchObject({ id: told, attempts: attempt });
      await store().failJob(told, 'a', { reason: 'crashed', issues: [] }, true);
    }
    for (let attempt = 1; attempt <= MOST_ATTEMPTS; attempt += 1) expect(await store().claimJob('a', NO_TIME_MS)).toMatchObject({ id: silent, attempts: attempt });
    expect(await store().claimJob('a', LEASE_MS)).toBeUndefined();
    expect(await store().listJobs(piano)).toMatchObject([{ status: 'failed', failure: { reason: 'crashed' } }, { status: 'failed', failure: { reason: 'crashed' } }]);
  });

  it('does not try again what cannot be read, and says place by place what is wrong with it', async () => {
    const [id = ''] = await asked(1);
    await store().claimJob('a', LEASE_MS);
    const failure = { reason: 'unreadable' as const, issues: [{ code: 'format', path: 'fmt.sampleRateHz', given: 1, allowed: '8000 to 384000' }] };
    await store().failJob(id, 'a', failure, false);
    expect(await store().listJobs(piano)).toMatchObject([{ status: 'failed', attempts: 1, failure }]);
  });

  it('calls a job off, in line or in hand, and says when there is none', async () => {
    const [running = '', waiting = ''] = await asked(2);
    await store().claimJob('a', LEASE_MS);
    for (const id of [running, waiting]) expect(await store().cancelJob(piano, id)).toMatchObject({ status: 'cancelled' });
    expect(await store().reportJob(running, 'a', 0.5, LEASE_MS)).toBe(false);
    expect(await store().claimJob('b', LEASE_MS)).toBeUndefined();
    expect(await failureOf(store().cancelJob(piano, 'nothing'))).toMatchObject({ reason: 'notFound' });
  });

  it('stands through the end of the program: what was given back comes again, at no cost of attempts', async () => {
    await asked(2);
    await store().claimJob('here', LEASE_MS);
    await store().releaseJobs('here');
    await store().claimJob('here', LEASE_MS);
    await book.reopen();
    expect(await statuses()).toEqual(['running', 'waiting']);
    await store().releaseJobs(null);
    expect(await store().listJobs(piano)).toMatchObject([{ status: 'waiting', attempts: 0 }, { status: 'waiting', attempts: 0 }]);
  });

  it('lets the work of the shop come before that of the demonstration', async () => {
    const own = piano;
    piano = (await store().addPiano(DEMO, { name: 'Invented', kind: 'grand' }, 'demo')).id;
    await asked(1);
    piano = own;
    const [later] = await asked(1);
    expect(await store().claimJob('a', LEASE_MS)).toMatchObject({ id: later });
    await store().removeDemo();
  });

  it('goes with the demonstration', async () => {
    piano = (await store().addPiano(DEMO, { name: 'Invented', kind: 'grand' }, 'demo')).id;
    await asked(1);
    await store().removeDemo();
    expect(await book.rows('select id from job')).toEqual([]);
  });
});
