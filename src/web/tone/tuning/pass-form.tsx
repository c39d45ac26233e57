import { type TuningPass, tuningStretches } from '#instrument';
import { unitSign } from '#units';
import { usePiano } from '../../api/piano.tsx';
import { TakenUp } from '../../kept/taken-up.tsx';
import { useLocale, useSay } from '../../language/use-say.ts';
import { ProblemNote } from '../../shell/problem-note.tsx';
import { useDraftForm } from '../../terms/use-draft-form.ts';
import { DayField } from '../../ui/day-field.tsx';
import { dayHere } from '../../ui/day-here.ts';
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
  const passing = usePassing();
  const { draft, set, errorOf, submit } = useDraftForm({
    name: `pass.${id}.${pass?.id ?? `new.${String(cycle)}`}`,
    base: (): Form => (pass === undefined ? emptyPass(dayHere()) : passFormOf(pass, locale)),
    stated: (typed) => passOf(typed, pass?.cycle ?? cycle, locale),
    onState: (stated, drop) => {
      const onKept = (): void => { drop(); onClose(); };
      passing.mutate(pass === undefined ? { kind: 'add', draft: stated, onKept } : { kind: 'change', id: pass.id, draft: stated, onKept });
    },
  });
  const { typed: form } = draft;
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
