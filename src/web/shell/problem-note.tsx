import { ApiProblem } from '../api/problem.ts';
import { sayProblem } from '../api/say-problem.ts';
import { useSay } from '../language/use-say.ts';
import { Note } from '../ui/note.tsx';
import { IssueList } from './issue-list.tsx';

/** Says plainly what went wrong, field by field, and offers another try where one may help. */
export function ProblemNote({ problem, onRetry }: { readonly problem: unknown; readonly onRetry?: () => void }) {
  const say = useSay();
  const known = problem instanceof ApiProblem ? problem : null;
  return (
    <Note tone="bad" role="alert">
      {known !== null && known.errors.length > 0 ? <IssueList issues={known.errors} /> : <p>{sayProblem(problem, say)}</p>}
      {onRetry !== undefined && (
        <div>
          <button type="button" className="button" onClick={onRetry}>
            {say('shell.problem.retry')}
          </button>
        </div>
      )}
    </Note>
  );
}
