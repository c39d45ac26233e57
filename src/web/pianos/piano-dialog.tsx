import type { Instrument, InstrumentDraft } from '#instrument';
import { TakenUp } from '../kept/taken-up.tsx';
import { useLocale, useSay } from '../language/use-say.ts';
import { ProblemNote } from '../shell/problem-note.tsx';
import { useDialogForm } from '../terms/use-dialog-form.ts';
import { AppDialog } from '../ui/app-dialog.tsx';
import { PianoFields } from './piano-fields.tsx';
import { type PianoForm, emptyPianoForm, pianoDraftOf, pianoFormOf } from './piano-form.ts';

interface PianoDialogProps {
  /** The piano whose card is changed; none to take one in. */
  readonly instrument?: Instrument;
  /** Writes it, and gives the piano's id. */
  readonly keep: (draft: InstrumentDraft) => Promise<string>;
  readonly onKept: (id: string) => void;
  readonly onClose: () => void;
}

/** The card of a piano: to take one in, or to correct what stands on it. What was typed stays until it is saved or given up. */
export default function PianoDialog({ instrument, keep, onKept, onClose }: PianoDialogProps) {
  const say = useSay();
  const locale = useLocale();
  const { form, draft, errorOf, problem, isBusy, submit } = useDialogForm<PianoForm, InstrumentDraft, string>({
    name: `piano.${instrument?.id ?? 'new'}`,
    base: () => (instrument === undefined ? emptyPianoForm : pianoFormOf(instrument)),
    stated: (typed) => pianoDraftOf(typed, locale),
    keep, onKept,
  });
  return (
    <AppDialog title={say(instrument === undefined ? 'pianos.add' : 'pianos.edit')} isOpen onClose={onClose}>
      <form ref={form} className="page-form" onSubmit={submit} noValidate>
        {draft.isTakenUp && <TakenUp />}
        <PianoFields typed={draft.typed} onChange={(next) => { draft.change(() => next); }} errorOf={errorOf} />
        {problem !== undefined && <ProblemNote problem={problem} />}
        <div className="dialog-foot">
          <button type="button" className="button" onClick={() => { draft.drop(); onClose(); }}>
            {say('shell.cancel')}
          </button>
          <button type="submit" className="button button-main" disabled={isBusy}>
            {say(instrument === undefined ? 'pianos.add.do' : 'shell.save')}
          </button>
        </div>
      </form>
    </AppDialog>
  );
}
