import type { Issue } from '#result';

/** What in a log does not stand in the order of its hours, each later than the one before. */
export function logOrderIssues(log: readonly { readonly hourCount: number }[]): readonly Issue[] {
  return log.flatMap(({ hourCount }, index): readonly Issue[] => {
    const before = log[index - 1]?.hourCount ?? -1;
    return hourCount > before ? [] : [{ code: 'order', path: `log[${String(index)}].hourCount`, given: hourCount, allowed: `more than ${String(before)}, the one before`, params: { above: before } }];
  });
}
