export { startJobs } from './runner.ts';
export type { JobRunner, RunnerOptions } from './runner.ts';
