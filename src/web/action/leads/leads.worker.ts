import { type LeadsOrder, solveJobs } from './leads-jobs.ts';

self.addEventListener('message', ({ data }: MessageEvent<LeadsOrder>) => {
  solveJobs(data, (news) => { self.postMessage(news); });
});
