import type { Result } from '#result';
import { explainIssue } from '#text';
import { type SyntheticEvent, useMemo, useState } from 'react';
import { usePiano } from '../api/piano.tsx';
import { type Draft, useDraft } from '../kept/draft.ts';
import { useLocale, useSay } from '../language/use-say.ts';

/** Fields of one part of the terms, and the way from what stands to the fields and back. */
interface TermsPart<Form, Terms, Draft> {
  /** Name the half-filled form is kept under: `scale.strings`. */
  readonly name: string;
  readonly standing: Terms | null;
  readonly formOf: (standing: Terms | null, locale: string) => Form;
  readonly termsOf: (form: Form, standing: Terms | null, locale: string) => Result<Draft>;
  readonly onState: (terms: Draft, onKept: () => void) => void;
}

export interface TermsFields<Form> {
  readonly draft: Draft<Form>;
  /** What is wrong with a field, once it was asked for. */
  readonly errorOf: (path: string) => string | undefined;
  /** How many fields are wrong, once it was asked for. */
  readonly wrong: number;
  readonly submit: (event: SyntheticEvent) => void;
}

/** One part of the terms of strings, bearing or action as a form: a draft that is kept, checked when it is stated. */
export function useTermsForm<Form extends object, Terms, TermsDraft>({ name, standing, formOf, termsOf, onState }: TermsPart<Form, Terms, TermsDraft>): TermsFields<Form> {
  const say = useSay();
  const locale = useLocale();
  const { id, cycle } = usePiano();
  const draft = useDraft(`${name}.${id}.${String(cycle)}`, () => formOf(standing, locale));
  const [isAsked, setAsked] = useState(false);
  const result = useMemo(() => termsOf(draft.typed, standing, locale), [draft.typed, standing, locale, termsOf]);
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
