import type { Issue, Result } from '#result';
import { type RefObject, type SyntheticEvent, useRef, useState } from 'react';
import { ApiProblem } from '../api/problem.ts';
import { type Draft, useDraft } from '../kept/draft.ts';
import { useLocale, useSay } from '../language/use-say.ts';
import { errorAt } from './error-at.ts';

interface DialogFormOptions<Form, Stated, Kept> {
  /** Name under which a half-filled form outlives a reload. */
  readonly name: string;
  readonly base: () => Form;
  readonly stated: (form: Form) => Result<Stated>;
  readonly keep: (stated: Stated) => Promise<Kept>;
  /** Called once it is kept and its draft forgotten. */
  readonly onKept: (kept: Kept) => void;
}

/** A form over the page. */
export interface DialogForm<Form> {
  readonly form: RefObject<HTMLFormElement | null>;
  readonly draft: Draft<Form>;
  readonly errorOf: (path: string) => string | undefined;
  readonly problem: unknown;
  readonly isBusy: boolean;
  readonly submit: (event: SyntheticEvent) => void;
}

/** A form over the page: kept whole, or refused field by field here and by the store, the first wrong field in focus; never lost half-filled. */
export function useDialogForm<Form extends object, Stated, Kept>({ name, base, stated, keep, onKept }: DialogFormOptions<Form, Stated, Kept>): DialogForm<Form> {
  const say = useSay();
  const locale = useLocale();
  const form = useRef<HTMLFormElement>(null);
  const draft = useDraft<Form>(name, base);
  const [issues, setIssues] = useState<readonly Issue[]>([]);
  const [problem, setProblem] = useState<unknown>();
  const [isBusy, setBusy] = useState(false);
  const refuseWith = (wrong: readonly Issue[]): void => {
    setIssues(wrong);
    setTimeout(() => form.current?.querySelector<HTMLElement>('[aria-invalid]')?.focus(), 0);
  };
  const submit = (event: SyntheticEvent): void => {
    event.preventDefault();
    // Opened from within a form of the page, its submit is not that form's.
    event.stopPropagation();
    const result = stated(draft.typed);
    if (!result.ok) {
      refuseWith(result.issues);
      return;
    }
    setIssues([]);
    setProblem(undefined);
    setBusy(true);
    keep(result.value).then((kept) => { draft.drop(); onKept(kept); }, (failure: unknown) => {
      if (failure instanceof ApiProblem && failure.errors.length > 0) refuseWith(failure.errors);
      setProblem(failure);
    }).finally(() => { setBusy(false); });
  };
  return { form, draft, errorOf: (path) => errorAt(issues, path, say, locale), problem, isBusy, submit };
}
