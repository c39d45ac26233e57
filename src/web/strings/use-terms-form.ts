import type { ScaleTerms, ScaleTermsDraft } from '#instrument';
import type { Result } from '#result';
import { explainIssue } from '#text';
import { type SyntheticEvent, useMemo, useState } from 'react';
import { usePiano } from '../api/piano.tsx';
import { type Draft, useDraft } from '../kept/draft.ts';
import { useLocale, useSay } from '../language/use-say.ts';

/** Fields of one part of the terms, and the way from what stands to the fields and back. */
interface TermsPart<Form> {
  readonly name: string;
  readonly formOf: (standing: ScaleTerms | null, locale: string) => Form;
  readonly termsOf: (form: Form, standing: ScaleTerms | null, locale: string) => Result<ScaleTermsDraft>;
  readonly onState: (terms: ScaleTermsDraft, onKept: () => void) => void;
}

interface TermsFields<Form> {
  readonly draft: Draft<Form>;
  /** What is wrong with a field, once it was asked for. */
  readonly errorOf: (path: string) => string | undefined;
  /** How many fields are wrong, once it was asked for. */
  readonly wrong: number;
  readonly submit: (event: SyntheticEvent) => void;
}

/** One part of the terms of strings and bearing as a form: a draft that is kept, checked when it is stated. */
export function useTermsForm<Form extends object>({ name, formOf, termsOf, onState }: TermsPart<Form>): TermsFields<Form> {
  const say = useSay();
  const locale = useLocale();
  const { id, cycle, scale } = usePiano();
  const draft = useDraft(`scale.${name}.${id}.${String(cycle)}`, () => formOf(scale, locale));
  const [isAsked, setAsked] = useState(false);
  const result = useMemo(() => termsOf(draft.typed, scale, locale), [draft.typed, scale, locale, termsOf]);
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
