import type { Say } from '#text';
import type { WorkItem } from '#workshop';

/** The name of a job: a remedy of the catalogue, or the words it was given. */
export function nameOfJob(say: Say, { remedy, remark }: Pick<WorkItem, 'remedy' | 'remark'>): string {
  const key = `remedy.${remedy}`;
  return say.knows(key) ? say(key) : remark === '' ? remedy : remark;
}
