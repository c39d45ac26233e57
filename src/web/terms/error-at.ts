import type { Issue } from '#result';
import { type Say, explainIssue } from '#text';

/** What is wrong with one field of a form, in words; nothing where nothing is. */
export function errorAt(issues: readonly Issue[], path: string, say: Say, locale: string): string | undefined {
  const here = issues.filter((issue) => issue.path === path);
  return here.length === 0 ? undefined : here.map((issue) => explainIssue(say, issue, locale)).join(' ');
}
