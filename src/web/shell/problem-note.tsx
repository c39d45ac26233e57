import { ApiProblem } from '../api/problem.ts';
import { useSay } from '../language/use-say.ts';
import { Note } from '../ui/note.tsx';

/** Says plainly what went wrong, field by field, and offers another try where one may help. */
export function ProblemNote({ problem, onRetry }: { readonly problem: unknown; readonly onRetry?: () => void }) {
  const say = useSay();
  const known = problem instanceof ApiProblem ? problem : null;
  const text = known === null ? String(problem) : known.status === 0 ? say('shell.problem.noAnswer') : known.message;
  return (
    <Note tone="bad" role="alert">
      <p>{text}</p>
      {known !== null && known.errors.length > 0 && (
        <ul>
          {known.errors.map((error) => (
            <li key={`${error.path} ${String(error.given)}`}>
              {say('shell.problem.field', { path: error.path, given: JSON.stringify(error.given) ?? '–', allowed: error.allowed ?? '–' })}
            </li>
          ))}
        </ul>
      )}
      {onRetry !== undefined && (
        <button type="button" className="button" onClick={onRetry}>
          {say('shell.problem.retry')}
        </button>
      )}
    </Note>
  );
}
