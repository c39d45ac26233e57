import { useState } from 'react';
import { addDemo, removeDemo } from '../api/mutations.ts';
import { useSay } from '../language/use-say.ts';
import { ProblemNote } from '../shell/problem-note.tsx';
import { toast } from '../toast/toasts.ts';

/** Brings the invented demo in, or takes all of it away, in one press. */
export function DemoBar({ hasDemo }: { readonly hasDemo: boolean }) {
  const say = useSay();
  const [busy, setBusy] = useState(false);
  const [problem, setProblem] = useState<unknown>();
  const press = async (): Promise<void> => {
    setBusy(true);
    setProblem(undefined);
    try {
      if (hasDemo) toast(say('pianos.demo.removed', { count: await removeDemo() }));
      else await addDemo();
    } catch (failure) {
      setProblem(failure);
    } finally {
      setBusy(false);
    }
  };
  return (
    <div className="demo-bar">
      <p className="soft">{say(hasDemo ? 'pianos.demo.here' : 'pianos.demo.offer')}</p>
      <button type="button" className="button" disabled={busy} onClick={() => void press()}>
        {say(hasDemo ? 'pianos.demo.remove' : 'pianos.demo.add')}
      </button>
      {problem !== undefined && <ProblemNote problem={problem} />}
    </div>
  );
}
