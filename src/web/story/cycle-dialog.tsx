import { useState } from 'react';
import { useSay } from '../language/use-say.ts';
import { ProblemNote } from '../shell/problem-note.tsx';
import { AppDialog } from '../ui/app-dialog.tsx';

interface CycleDialogProps {
  readonly cycle: number;
  readonly onOpen: () => Promise<void>;
  readonly onClose: () => void;
}

/** Asks before a new stay is opened, and says what that means for the figures of the earlier ones. */
export default function CycleDialog({ cycle, onOpen, onClose }: CycleDialogProps) {
  const say = useSay();
  const [busy, setBusy] = useState(false);
  const [problem, setProblem] = useState<unknown>();
  const open = async (): Promise<void> => {
    setBusy(true);
    try {
      await onOpen();
      onClose();
    } catch (failure) {
      setProblem(failure);
      setBusy(false);
    }
  };
  return (
    <AppDialog title={say('story.cycle.open')} isOpen onClose={onClose}>
      <p>{say('story.cycle.explain', { cycle })}</p>
      {problem !== undefined && <ProblemNote problem={problem} />}
      <div className="dialog-foot">
        <button type="button" className="button" onClick={onClose}>
          {say('shell.cancel')}
        </button>
        <button type="button" className="button button-main" disabled={busy} onClick={() => void open()}>
          {say('story.cycle.do', { cycle })}
        </button>
      </div>
    </AppDialog>
  );
}
