import type { KeyPlan, LeastWork } from '#action';
import type { BenchOperation } from '#instrument';
import { benchJobs } from './bench-jobs.ts';
import type { WorkItemDraft } from './records.ts';
import { remeasureOf } from './remedy-plan.ts';

/** Place of each kind of change in the order of the bench, as the list of jobs counts it. */
const STAGES = { friction: 1, ratio: 2, hammer: 3, front: 4 } as const;

/** What a job names as its cause when it was taken from the plan of least work; words under `cause.leastWork`. */
export const LEAST_WORK = 'leastWork';

/**
 * Turns a plan of least work into jobs for the bench, each with what to weigh again and the words it is remarked with: by stage, like jobs
 * together, bass to treble.
 */
export function leastWorkJobs({ keys, stages }: Pick<LeastWork, 'keys' | 'stages'>, cycle: number, remarkOf: (plan: KeyPlan, done: KeyPlan['work'][number]) => string): readonly WorkItemDraft[] {
  const planOf = new Map(keys.map((plan) => [plan.key, plan]));
  return stages.flatMap(({ changes, operations }) => operations.flatMap(({ operation, keys: on }) => on.flatMap((key): readonly WorkItemDraft[] => {
    const plan = planOf.get(key);
    const done = plan?.work.find((one) => one.operation === operation);
    if (plan === undefined || done === undefined) return [];
    const { remedy } = benchJobs[operation as BenchOperation];
    return [{ cycle, key, remedy, cause: LEAST_WORK, remark: remarkOf(plan, done), remeasure: [...remeasureOf(remedy)], stage: STAGES[changes] }];
  })));
}
