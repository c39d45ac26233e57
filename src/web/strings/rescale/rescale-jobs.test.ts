import { type RescaleProblem, rescale } from '#strings';
import { hertz, millimetres, newtons } from '#units';
import { describe, expect, it } from 'vitest';
import type { ThreadWatch } from '../../ui/thread.ts';
import { type RescaleNews, runProblems } from './rescale-jobs.ts';

/** Notes of a treble with a few sizes each; the total held makes the search take several steps. */
const problem: RescaleProblem = {
  weights: { tensionSmoothness: 1, inharmonicitySmoothness: 0.3, sizeChange: 0.001 },
  limits: { totalTensionN: newtons(41_000) },
  notes: Array.from({ length: 20 }, (_, place) => ({
    key: 60 + place, frequencyHz: hertz(783.99 * 2 ** (place / 12)), speakingLengthMm: millimetres(240 * 2 ** (-place / 13)), strings: 3,
    candidates: [0.8, 0.825, 0.85, 0.875, 0.9, 0.925, 0.95].map((diameterMm) => ({ diameterMm: millimetres(diameterMm) })),
  })),
};

/** A watch whose clock goes on by a tenth of a second at each look, so that every step is spoken of. */
function watching(shouldStop: (pauses: number) => boolean): ThreadWatch<RescaleNews> & { readonly news: RescaleNews[] } {
  const news: RescaleNews[] = [];
  let [now, pauses] = [0, 0];
  return {
    news, onNews: (one) => news.push(one), shouldStop: () => shouldStop(pauses), nowMs: () => (now += 100),
    pause: () => { pauses += 1; return Promise.resolve(); },
  };
}

describe('problems run one after the other', () => {
  it('end each with what a rescale by itself answers, in order', async () => {
    const watch = watching(() => false);
    await runProblems([problem, problem], watch);
    const ends = watch.news.filter(({ type }) => type !== 'progress');
    const result = rescale(problem);
    expect(result.ok).toBe(true);
    expect(ends).toEqual([{ type: 'result', place: 0, result, wasStopped: false }, { type: 'result', place: 1, result, wasStopped: false }]);
    expect(watch.news.some(({ type }) => type === 'progress')).toBe(true);
  });

  it('told to stop, give the best so far of the one they are at and leave out the rest', async () => {
    const watch = watching((pauses) => pauses >= 1);
    await runProblems([problem, problem], watch);
    expect(watch.news.filter(({ type, place }) => type === 'result' && place === 1)).toEqual([]);
    const stopped = watch.news.find((one) => one.type === 'result');
    const progress = watch.news.find((one) => one.type === 'progress');
    expect(progress).toBeDefined();
    if (stopped?.type === 'result' && progress?.type === 'progress') expect(stopped).toMatchObject({ wasStopped: true, result: { ok: true, value: progress.progress.best } });
    expect(stopped !== undefined).toBe(progress?.type === 'progress' && progress.progress.best !== undefined);
  });

  it('begin nothing when they were stopped before', async () => {
    const watch = watching(() => true);
    await runProblems([problem], watch);
    expect(watch.news).toEqual([]);
  });
});
