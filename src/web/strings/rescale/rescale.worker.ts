import { type RescaleOrder, runProblems } from './rescale-jobs.ts';

/** Orders that are to stop. */
const stopped = new Set<number>();

self.addEventListener('message', ({ data }: MessageEvent<RescaleOrder>) => {
  if (data.type === 'stop') {
    stopped.add(data.id);
    return;
  }
  void runProblems(data.id, data.problems, {
    onNews: (news) => { self.postMessage(news); },
    shouldStop: () => stopped.has(data.id),
    pause: () => new Promise((resolve) => { setTimeout(resolve, 0); }),
    nowMs: () => performance.now(),
  });
});
