import type { Result } from '#result';
import { type SyntheticEvent, useCallback, useMemo, useState } from 'react';
import { type Draft, useDraft } from '../kept/draft.ts';
import { useLocale, useSay } from '../language/use-say.ts';
import { errorAt } from './error-at.ts';

interface DraftFormOptions<Form, Stated> {
  /** Name the half-filled form is kept under on this device. */
  readonly name: string;
  /** The fields as the form opens. */
  readonly base: () => Form;
  /** What the fields state, or which are wrong. Asked again only for other fields where it stays the same function. */
  readonly stated: (form: Form) => Result<Stated>;
  /** Called with what is stated; `drop` forgets the draft once it is kept. */
  readonly onState: (stated: Stated, drop: () => void) => void;
}

/** A form that is kept half-filled and checked when it is stated. */
export interface DraftForm<Form, Stated = unknown> {
  readonly draft: Draft<Form>;
  /** Changes fields; the same function as long as the form is open. */
  readonly set: (part: Partial<Form> | ((now: Form) => Partial<Form>)) => void;
  /** What the fields state as they are, or which are wrong. */
  readonly result: Result<Stated>;
  /** What is wrong with a field, once it was asked for. */
  readonly errorOf: (path: string) => string | undefined;
  /** How many fields are wrong, once it was asked for. */
  readonly wrong: number;
  readonly submit: (event: SyntheticEvent) => void;
}

/** A form whose fields outlive a reload, are checked when it is stated, and are told wrong from then on. */
export function useDraftForm<Form extends object, Stated>({ name, base, stated, onState }: DraftFormOptions<Form, Stated>): DraftForm<Form, Stated> {
  const say = useSay();
  const locale = useLocale();
  const draft = useDraft(name, base);
  const [isAsked, setAsked] = useState(false);
  const { typed, change } = draft;
  const result = useMemo(() => stated(typed), [stated, typed]);
  const set = useCallback<DraftForm<Form, Stated>['set']>((part) => { change((now) => ({ ...now, ...(typeof part === 'function' ? part(now) : part) })); }, [change]);
  const issues = isAsked && !result.ok ? result.issues : [];
  return {
    draft, set, result,
    errorOf: (path) => errorAt(issues, path, say, locale),
    wrong: issues.length,
    submit: (event) => {
      event.preventDefault();
      setAsked(true);
      if (result.ok) onState(result.value, draft.drop);
    },
  };
}
