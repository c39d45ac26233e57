import type { ReactNode } from 'react';
import { TakenUp } from '../kept/taken-up.tsx';
import { useSay } from '../language/use-say.ts';
import type { TermsFields } from './use-terms-form.ts';

interface TermsFrameProps<Form> {
  /** Name of the heading, by which the form is labelled. */
  readonly id: string;
  readonly title: string;
  readonly fields: TermsFields<Form>;
  readonly isBusy: boolean;
  readonly onClose: () => void;
  readonly className?: string;
  readonly children: ReactNode;
}

/** The form of one part of the terms: its heading, whether a half-filled one was taken up, what is wrong, and the way out. */
export function TermsFrame<Form>({ id, title, fields: { draft, wrong, submit }, isBusy, onClose, className = 'panel', children }: TermsFrameProps<Form>) {
  const say = useSay();
  return (
    <form className={className} onSubmit={submit} noValidate aria-labelledby={id}>
      <h2 id={id}>{title}</h2>
      {draft.isTakenUp && <TakenUp />}
      {children}
      {wrong > 0 && <p className="field-error" role="alert">{say('strings.terms.wrong', { count: wrong })}</p>}
      <div className="row">
        <button type="submit" className="button button-main" disabled={isBusy}>{say('strings.terms.state')}</button>
        <button type="button" className="button" onClick={() => { draft.drop(); onClose(); }}>{say('action.intent.cancel')}</button>
      </div>
    </form>
  );
}
