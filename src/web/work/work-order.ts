import type { WorkItem, WorkItemDraft } from '#workshop';

/** One group of the bench sheet: a remedy of a stage with the keys it is to be done on. */
export interface WorkGroup {
  readonly remedy: string;
  readonly items: readonly WorkItem[];
}

export interface WorkStage {
  readonly stage: number;
  readonly groups: readonly WorkGroup[];
}

/** Which jobs are looked at; `all` leaves out those dropped. */
export const workFilters = ['open', 'done', 'all', 'dropped'] as const;
export type WorkFilter = (typeof workFilters)[number];

/** Jobs of a filter, and those just changed, which stay in view until another filter is chosen. */
export function chooseWork(work: readonly WorkItem[], filter: WorkFilter, justChanged: ReadonlySet<string>): readonly WorkItem[] {
  return work.filter(({ id, status }) => justChanged.has(id) || (filter === 'all' ? status !== 'dropped' : status === filter));
}

/** Items in the order of the bench: by stage, like jobs together, bass to treble. */
export function stagesOf(work: readonly WorkItem[]): readonly WorkStage[] {
  return [1, 2, 3, 4, 5].flatMap((stage): readonly WorkStage[] => {
    const items = work.filter((item) => item.stage === stage).sort((a, b) => (a.key ?? 0) - (b.key ?? 0));
    if (items.length === 0) return [];
    const remedies = [...new Set(items.map(({ remedy }) => remedy))];
    return [{ stage, groups: remedies.map((remedy) => ({ remedy, items: items.filter((item) => item.remedy === remedy) })) }];
  });
}

/** Planned jobs that do not stand in the list yet; a job that was dropped is not asked for again. */
export function missingFrom(work: readonly WorkItem[], planned: readonly WorkItemDraft[]): readonly WorkItemDraft[] {
  const standing = new Set(work.map(({ key, remedy }) => `${String(key)} ${remedy}`));
  return planned.filter(({ key, remedy }) => !standing.has(`${String(key)} ${remedy}`));
}
