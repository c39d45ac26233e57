import { type TuningPass, tuningStretches } from '#instrument';
import { explainIssue } from '#text';
import { unitSign } from '#units';
import { type SyntheticEvent, useMemo, useState } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { useDraft } from '../../kept/draft.ts';
import { TakenUp } from '../../kept/taken-up.tsx';
import { useLocale, useSay } from '../../language/use-say.ts';
import { ProblemNote } from '../../shell/problem-note.tsx';
import { DayField } from '../../ui/day-field.tsx';
import { Field } from '../../ui/field.tsx';
import { SelectField } from '../../ui/select-field.tsx';
import { type PassForm as Form, emptyPass, passFigures, passFormOf, passOf } from './pass-draft.ts';
import { usePassing } from './use-passes.ts';

interface PassFormProps {
  /** Absent for a new one. */
  readonly pass?: TuningPass | undefined;
  readonly onClose: () => void;
}

/** One pass over the strings: kept, or corrected. Half-filled it stays on the device. */
export function PassForm({ pass, onClose }: PassFormProps) {
  const say = useSay();
  const locale = useLocale();
  const { id, cycle } = usePiano();
  const draft = useDraft<Form>(`pass.${id}.${pass?.id ?? `new.${String(cycle)}`}`, () => (pass === undefined ? emptyPass(new Date().toLocaleDateString('sv-SE')) : passFormOf(pass, locale)));
  const { typed: form, change } = draft;
  const [isAsked, setAsked] = useState(false);
  const result = useMemo(() => passOf(form, pass?.cycle ?? cycle, locale), [form, pass, cycle, locale]);
  const passing = usePassing();
  const errorOf = (path: string): string | undefined => {
    const wrong = isAsked && !result.ok ? result.issues.filter((issue) => issue.path === path) : [];
    return wrong.length === 0 ? undefined : wrong.map((issue) => explainIssue(say, issue, locale)).join(' ');
  };
  const set = (part: Partial<Form>): void => { change((now) => ({ ...now, ...part })); };
  const submit = (event: SyntheticEvent): void => {
    event.preventDefault();
    setAsked(true);
    if (!result.ok) return;
    const onKept = (): void => { draft.drop(); onClose(); };
    passing.mutate(pass === undefined ? { kind: 'add', draft: result.value, onKept } : { kind: 'change', id: pass.id, draft: result.value, onKept });
  };
  return (
    <form onSubmit={submit} noValidate aria-labelledby="pass-form" className="pass-form">
      <h3 id="pass-form">{say('pass.add')}</h3>
      {draft.isTakenUp && <TakenUp />}
      <div className="fields">
        <DayField label={say('pass.field.day')} value={form.day} hint={errorOf('day') ?? ''} onChange={(day) => { set({ day }); }} />
        <Field label={say('pass.field.time')} value={form.time} error={errorOf('time')} hint={say('pass.hint.time')} onChange={(time) => { set({ time }); }} />
        <SelectField label={say('pass.field.stretch')} value={form.stretch} options={tuningStretches.map((value) => ({ value, label: say(`pass.stretch.${value}`) }))} onChange={(stretch) => { set({ stretch }); }} />
        {passFigures.map(([name, unit]) => <Field key={name} label={`${say(`pass.field.${name}`)} (${unitSign[unit]})`} inputMode="text" value={form[name]} error={errorOf(name)} {...(name === 'leftCt' ? { hint: say('pass.hint.leftCt') } : {})} onChange={(value) => { set({ [name]: value }); }} />)}
      </div>
      <Field label={say('pass.field.remark')} value={form.remark} lines={2} maxLength={2000} onChange={(remark) => { set({ remark }); }} />
      {passing.error !== null && <ProblemNote problem={passing.error} />}
      <div className="row">
        <button type="submit" className="button button-main" disabled={passing.isPending}>{say('pass.keep')}</button>
        <button type="button" className="button" onClick={() => { draft.drop(); onClose(); }}>{say('action.intent.cancel')}</button>
      </div>
    </form>
  );
}
