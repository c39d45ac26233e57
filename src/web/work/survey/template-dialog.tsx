import type { CardOf, SurveyPoint } from '#workshop';
import { useState } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { useDraft } from '../../kept/draft.ts';
import { TakenUp } from '../../kept/taken-up.tsx';
import { useSay } from '../../language/use-say.ts';
import { ProblemNote } from '../../shell/problem-note.tsx';
import { addCard, changeCard } from '../../shop/shop-writing.ts';
import { AppDialog } from '../../ui/app-dialog.tsx';
import { TemplatePoints } from './template-points.tsx';

interface TemplateDialogProps {
  /** The shop's own, where there is one; else one is made from the points that are usual. */
  readonly template: CardOf<'template'> | undefined;
  readonly points: readonly SurveyPoint[];
  readonly onClose: () => void;
}

/** What is looked at in a survey of this kind of instrument: points added, reworded, left out, put in another order. */
export function TemplateDialog({ template, points, onClose }: TemplateDialogProps) {
  const say = useSay();
  const { instrument } = usePiano();
  const draft = useDraft<{ readonly points: readonly SurveyPoint[] }>(`survey.${template?.id ?? instrument.kind}`, () => ({ points }));
  const [problem, setProblem] = useState<unknown>();
  const typed = draft.typed.points;
  const keep = async (): Promise<void> => {
    setProblem(undefined);
    const wanted = typed.filter(({ ask }) => ask.trim() !== '').map(({ part, ask }) => ({ part, ask: ask.trim() }));
    try {
      if (template === undefined) await addCard({ kind: 'template', instrument: instrument.kind, points: wanted });
      else await changeCard(template.id, { kind: 'template', points: wanted });
      draft.drop();
      onClose();
    } catch (failure) {
      setProblem(failure);
    }
  };
  return (
    <AppDialog title={say('survey.template.title', { kind: instrument.kind })} isOpen onClose={onClose} form="wide">
      {draft.isTakenUp && <TakenUp />}
      <p className="soft">{say('survey.template.hint')}</p>
      <TemplatePoints points={typed} onChange={(turn) => { draft.change((now) => ({ points: turn(now.points) })); }} />
      {problem !== undefined && <ProblemNote problem={problem} />}
      <div className="dialog-foot">
        <button type="button" className="button" onClick={() => { draft.drop(); onClose(); }}>{say('shell.cancel')}</button>
        <button type="button" className="button button-main" onClick={() => void keep()}>{say('shell.save')}</button>
      </div>
    </AppDialog>
  );
}
