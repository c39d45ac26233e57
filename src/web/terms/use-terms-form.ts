import type { Result } from '#result';
import { usePiano } from '../api/piano.tsx';
import { useLocale } from '../language/use-say.ts';
import { type DraftForm, useDraftForm } from './use-draft-form.ts';

/** Fields of one part of the terms, and the way from what stands to the fields and back. */
interface TermsPart<Form, Terms, TermsDraft> {
  /** Name the half-filled form is kept under: `scale.strings`. */
  readonly name: string;
  readonly standing: Terms | null;
  readonly formOf: (standing: Terms | null, locale: string) => Form;
  readonly termsOf: (form: Form, standing: Terms | null, locale: string) => Result<TermsDraft>;
  readonly onState: (terms: TermsDraft, onKept: () => void) => void;
}

export type TermsFields<Form> = DraftForm<Form>;

/** One part of the terms of strings, bearing or action as a form: a draft that is kept, checked when it is stated. */
export function useTermsForm<Form extends object, Terms, TermsDraft>({ name, standing, formOf, termsOf, onState }: TermsPart<Form, Terms, TermsDraft>): TermsFields<Form> {
  const locale = useLocale();
  const { id, cycle } = usePiano();
  return useDraftForm({ name: `${name}.${id}.${String(cycle)}`, base: () => formOf(standing, locale), stated: (form: Form) => termsOf(form, standing, locale), onState });
}
