import type { Instrument, InstrumentDraft } from '#instrument';
import type { Issue } from '#result';
import { type SyntheticEvent, useRef, useState } from 'react';
import { ApiProblem } from '../api/problem.ts';
import { useLocale, useSay } from '../language/use-say.ts';
import { useDraft } from '../kept/draft.ts';
import { TakenUp } from '../kept/taken-up.tsx';
import { ProblemNote } from '../shell/problem-note.tsx';
import { AppDialog } from '../ui/app-dialog.tsx';
import { PianoFields } from './piano-fields.tsx';
import { type PianoForm, emptyPianoForm, pianoDraftOf, pianoFormOf } from './piano-form.ts';

interface PianoDialogProps {
  /** The piano whose card is changed; none to take one in. */
  readonly instrument?: Instrument;
  readonly onClose: () => void;
  readonly onSave: (draft: InstrumentDraft) => Promise<unknown>;
}

/** The card of a piano: to take one in, or to correct what stands on it. What was typed stays until it is saved or given up. */
export default function PianoDialog({ instrument, onClose, onSave }: PianoDialogProps) {
  const say = useSay();
  const locale = useLocale();
  const form = useRef<HTMLFormElement>(null);
  const { typed, change, drop, isTakenUp } = useDraft<PianoForm>(`piano.${instrument?.id ?? 'new'}`, () => (instrument === undefined ? emptyPianoForm : pianoFormOf(instrument)));
  const [issues, setIssues] = useState<readonly Issue[]>([]);
  const [problem, setProblem] = useState<unknown>();
  const [busy, setBusy] = useState(false);

  const refuse = (wrong: readonly Issue[]): void => {
    setIssues(wrong);
    setTimeout(() => form.current?.querySelector<HTMLElement>('[aria-invalid]')?.focus(), 0);
  };
  const save = async (draft: InstrumentDraft): Promise<void> => {
    setBusy(true);
    setProblem(undefined);
    try {
      await onSave(draft);
      drop();
      onClose();
    } catch (failure) {
      if (failure instanceof ApiProblem && failure.errors.length > 0) refuse(failure.errors);
      setProblem(failure);
    } finally {
      setBusy(false);
    }
  };
  const submit = (event: SyntheticEvent): void => {
    event.preventDefault();
    const draft = pianoDraftOf(typed, locale);
    if (!draft.ok) {
      refuse(draft.issues);
      return;
    }
    setIssues([]);
    void save(draft.value);
  };
  return (
    <AppDialog title={say(instrument === undefined ? 'pianos.add' : 'pianos.edit')} isOpen onClose={onClose}>
      <form ref={form} className="page-form" onSubmit={submit} noValidate>
        {isTakenUp && <TakenUp />}
        <PianoFields typed={typed} onChange={(next) => { change(() => next); }} issues={issues} />
        {problem !== undefined && <ProblemNote problem={problem} />}
        <div className="dialog-foot">
          <button type="button" className="button" onClick={() => { drop(); onClose(); }}>
            {say('shell.cancel')}
          </button>
          <button type="submit" className="button button-main" disabled={busy}>
            {say(instrument === undefined ? 'pianos.add.do' : 'shell.save')}
          </button>
        </div>
      </form>
    </AppDialog>
  );
}
