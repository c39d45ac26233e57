import type { ActionTerms, ActionTermsDraft } from '#instrument';
import type { Result } from '#result';
import { explainIssue } from '#text';
import { type SyntheticEvent, useMemo, useState } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { type Draft, useDraft } from '../../kept/draft.ts';
import { useLocale, useSay } from '../../language/use-say.ts';

/** Fields of one part of the terms of the action, and the way from what stands to the fields and back. */
interface ActionPart<Form> {
  readonly name: string;
  readonly formOf: (standing: ActionTerms | null, locale: string) => Form;
  readonly termsOf: (form: Form, standing: ActionTerms | null, locale: string) => Result<ActionTermsDraft>;
  readonly onState: (terms: ActionTermsDraft, onKept: () => void) => void;
}

interface ActionFields<Form> {
  readonly draft: Draft<Form>;
  /** What is wrong with a field, once it was asked for. */
  readonly errorOf: (path: string) => string | undefined;
  readonly wrong: number;
  readonly submit: (event: SyntheticEvent) => void;
}

/** One part of the terms of the action as a form: a draft that is kept, checked when it is stated. */
export function useActionForm<Form extends object>({ name, formOf, termsOf, onState }: ActionPart<Form>): ActionFields<Form> {
  const say = useSay();
  const locale = useLocale();
  const { id, cycle, action } = usePiano();
  const draft = useDraft(`action.${name}.${id}.${String(cycle)}`, () => formOf(action, locale));
  const [isAsked, setAsked] = useState(false);
  const result = useMemo(() => termsOf(draft.typed, action, locale), [draft.typed, action, locale, termsOf]);
  const issues = isAsked && !result.ok ? result.issues : [];
  return {
    draft,
    errorOf: (path) => {
      const here = issues.filter((issue) => issue.path === path);
      return here.length === 0 ? undefined : here.map((issue) => explainIssue(say, issue, locale)).join(' ');
    },
    wrong: issues.length,
    submit: (event) => {
      event.preventDefault();
      setAsked(true);
      if (result.ok) onState(result.value, draft.drop);
    },
  };
}
