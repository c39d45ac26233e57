import type { Issue } from '#result';
import { explainIssue } from '#text';
import { useLocale, useSay } from '../language/use-say.ts';

/** What was wrong, one line a cell: where, what stood there, what is allowed. */
export function IssueList({ issues }: { readonly issues: readonly Issue[] }) {
  const say = useSay();
  const locale = useLocale();
  return (
    <ul>
      {issues.map((issue) => (
        <li key={`${issue.path} ${issue.code} ${String(issue.given)}`}>
          {issue.path !== '' && <strong>{issue.path}: </strong>}
          {explainIssue(say, issue, locale)}
        </li>
      ))}
    </ul>
  );
}
