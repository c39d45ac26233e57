import type { TouchAnalysis } from '#action';
import { usePiano } from '../api/piano.tsx';
import { useSay } from '../language/use-say.ts';
import { ProblemNote } from '../shell/problem-note.tsx';
import { Note } from '../ui/note.tsx';
import { IntentForm } from './intent-form.tsx';
import { IntentLine } from './intent-line.tsx';
import { useStateIntent } from './use-state-intent.ts';

interface AskedProps {
  readonly analysis: TouchAnalysis | undefined;
  readonly isAsking: boolean;
  readonly onAsking: (isAsking: boolean) => void;
}

/** What is to be even: asked until it was said, then in one line. */
export function Asked({ analysis, isAsking, onAsking }: AskedProps) {
  const say = useSay();
  const { intent, isCurrent } = usePiano();
  const stating = useStateIntent(() => { onAsking(false); });
  if (intent === null && !isCurrent) return <Note>{say('caveat.noIntent')}</Note>;
  return (
    <>
      {intent === null || isAsking ? (
        <IntentForm analysis={analysis} isBusy={stating.isPending} onState={(next, onKept) => { stating.mutate(next, { onSuccess: onKept }); }} {...(intent === null ? {} : { onCancel: () => { onAsking(false); } })} />
      ) : (
        <IntentLine intent={intent} onChange={() => { onAsking(true); }} />
      )}
      {stating.error !== null && <ProblemNote problem={stating.error} />}
    </>
  );
}
