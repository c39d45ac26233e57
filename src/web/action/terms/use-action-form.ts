import type { ActionTerms, ActionTermsDraft } from '#instrument';
import type { Result } from '#result';
import { usePiano } from '../../api/piano.tsx';
import { useTermsForm } from '../../terms/use-terms-form.ts';

/** Fields of one part of the terms of the action, and the way from what stands to the fields and back. */
interface ActionPart<Form> {
  readonly name: string;
  readonly formOf: (standing: ActionTerms | null, locale: string) => Form;
  readonly termsOf: (form: Form, standing: ActionTerms | null, locale: string) => Result<ActionTermsDraft>;
  readonly onState: (terms: ActionTermsDraft, onKept: () => void) => void;
}

/** One part of the terms of the action as a form: a draft that is kept, checked when it is stated. */
export function useActionForm<Form extends object>({ name, ...part }: ActionPart<Form>) {
  const { action } = usePiano();
  return useTermsForm({ name: `action.${name}`, standing: action, ...part });
}
