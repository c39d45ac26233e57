import type { Result } from '#result';
import type { ReactNode } from 'react';
import { TakenUp } from '../kept/taken-up.tsx';
import { useSay } from '../language/use-say.ts';
import { ProblemNote } from '../shell/problem-note.tsx';
import type { CardField } from '../shop/card-fields.ts';
import { FieldControl } from '../shop/field-control.tsx';
import { useDialogForm } from '../terms/use-dialog-form.ts';
import { AppDialog } from '../ui/app-dialog.tsx';

/** A form whose plain fields are declared; what else it asks stands beside them. */
export interface FieldsForm {
  readonly fields: Readonly<Record<string, string>>;
}

/** What parts of a form beside its plain fields are given. */
export interface FormPart<Form> {
  readonly typed: Form;
  readonly change: (turn: (now: Form) => Form) => void;
  readonly errorOf: (path: string) => string | undefined;
}

interface FieldsDialogProps<Form extends FieldsForm, Draft> {
  readonly title: string;
  /** Name under which a half-filled form outlives a reload. */
  readonly name: string;
  readonly fields: readonly CardField[];
  readonly base: () => Form;
  readonly stated: (form: Form) => Result<Draft>;
  readonly keep: (draft: Draft) => Promise<unknown>;
  readonly onClose: () => void;
  /** What is asked beyond the plain fields. */
  readonly more?: (part: FormPart<Form>) => ReactNode;
}

const NO_BOOK = { cards: [], contacts: new Map(), pianos: new Map() } as const;

/** A form of declared fields over the page: kept whole or refused field by field, and never lost half-filled. */
export function FieldsDialog<Form extends FieldsForm, Draft>({ title, name, fields, base, stated, keep, onClose, more }: FieldsDialogProps<Form, Draft>) {
  const say = useSay();
  const { form, draft, errorOf, problem, isBusy, submit } = useDialogForm<Form, Draft, unknown>({ name, base, stated, keep, onKept: onClose });
  const { typed, change } = draft;
  return (
    <AppDialog title={title} isOpen onClose={onClose} form="wide">
      <form ref={form} className="card-form papers-form" onSubmit={submit} noValidate>
        {draft.isTakenUp && <TakenUp />}
        <div className="fields">
        {fields.map((field) => (
          <FieldControl key={field.path} field={field} book={NO_BOOK} value={typed.fields[field.path] ?? ''} error={errorOf(field.path)} onChange={(value) => { change((now) => ({ ...now, fields: { ...now.fields, [field.path]: value } })); }} />
        ))}
        </div>
        {more?.({ typed, change, errorOf })}
        {problem !== undefined && <ProblemNote problem={problem} />}
        <div className="dialog-foot">
          <button type="button" className="button" onClick={() => { draft.drop(); onClose(); }}>{say('shell.cancel')}</button>
          <button type="submit" className="button button-main" disabled={isBusy}>{say('shell.save')}</button>
        </div>
      </form>
    </AppDialog>
  );
}
