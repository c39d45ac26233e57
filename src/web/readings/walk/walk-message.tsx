import { explainIssue } from '#text';
import { useLocale, useSay } from '../../language/use-say.ts';
import { Note } from '../../ui/note.tsx';
import { useWords } from '../use-words.ts';
import type { WalkProblem, WalkState, WalkWarning } from './walk-state.ts';

/** Why the walk stays where it is: what was refused and what is allowed, or what is unlikely and how to keep it. */
export function WalkMessage({ state: { problem, warnings } }: { readonly state: WalkState }) {
  const say = useSay();
  const problemText = useProblemText();
  const warningText = useWarningText();
  return (
    <div className="walk-message" role="alert">
      {problem !== null && <Note tone="bad"><p><strong aria-hidden="true">✕ </strong>{problemText(problem)}</p></Note>}
      {warnings.length > 0 && (
        <Note tone="warn">
          {warnings.map((warning) => <p key={warning.code === 'unlikely' ? warning.slot.quantity : warning.code}><strong aria-hidden="true">▲ </strong>{warningText(warning)}</p>)}
          <p>{say('readings.walk.warn.keep')}</p>
        </Note>
      )}
    </div>
  );
}

function useProblemText(): (problem: WalkProblem) => string {
  const say = useSay();
  const locale = useLocale();
  const words = useWords();
  return (problem) => {
    switch (problem.code) {
      case 'tooMany': return say('readings.walk.problem.tooMany', { given: problem.given, allowed: problem.allowed });
      case 'clearFirst': return say('readings.walk.problem.clearFirst', { draft: problem.draft });
      case 'remarkNeedsReading': return say('readings.walk.problem.remarkNeedsReading');
      case 'notUnderstood': {
        const { quantity } = problem.slot;
        if (problem.issue.code !== 'range') return explainIssue(say, problem.issue, locale);
        return say('readings.walk.problem.range', { quantity: say(`quantity.${quantity}.name`), given: String(problem.issue.given), ...words.range(quantity, 'possible') });
      }
    }
  };
}

function useWarningText(): (warning: WalkWarning) => string {
  const say = useSay();
  const words = useWords();
  return (warning) => {
    if (warning.code === 'upAboveDown') {
      return say('readings.walk.warn.upAboveDown', { up: words.figure('upWeightG', warning.upG, true), down: words.figure('downWeightG', warning.downG, true) });
    }
    const { quantity } = warning.slot;
    return say('readings.walk.warn.unlikely', { quantity: say(`quantity.${quantity}.name`), given: String(warning.issue.given), ...words.range(quantity, 'plausible') });
  };
}
