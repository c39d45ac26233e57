import { type CareOf, visitCounts, wornParts, type WornPart } from '#workshop';
import { usePiano } from '../api/piano.tsx';
import { TakenUp } from '../kept/taken-up.tsx';
import { useLocale, useSay } from '../language/use-say.ts';
import { ProblemNote } from '../shell/problem-note.tsx';
import { useDraftForm } from '../terms/use-draft-form.ts';
import { DayField } from '../ui/day-field.tsx';
import { Field } from '../ui/field.tsx';
import { SelectField } from '../ui/select-field.tsx';
import { useCaring } from './care-queries.ts';
import { type LifeForm, type PlanForm as Form, planFigures, planFormOf, planOf } from './plan-draft.ts';

/** What is asked of the care: visits, playing, the band of humidity, widths of wood, lives of parts. Half-filled it stays on the device. */
export function PlanForm({ plan, onClose }: { readonly plan: CareOf<'plan'> | undefined; readonly onClose: () => void }) {
  const say = useSay();
  const locale = useLocale();
  const { id } = usePiano();
  const caring = useCaring();
  const { draft, set, errorOf, submit } = useDraftForm({
    name: `care.plan.${id}`,
    base: (): Form => planFormOf(plan, locale),
    stated: (typed) => planOf(typed, locale),
    onState: (stated, drop) => {
      const onKept = (): void => { drop(); onClose(); };
      caring.mutate(plan === undefined ? { kind: 'add', draft: stated, onKept } : { kind: 'change', id: plan.id, change: stated, onKept });
    },
  });
  const { typed: form, change } = draft;
  const visits = visitCounts.map((count) => ({ value: String(count), label: String(count) }));
  const setLife = (part: WornPart, turn: Partial<LifeForm>): void => { change((now) => ({ ...now, lives: { ...now.lives, [part]: { ...now.lives[part], ...turn } } })); };
  return (
    <form onSubmit={submit} noValidate aria-labelledby="care-plan" className="care-form">
      {draft.isTakenUp && <TakenUp />}
      <p className="soft small">{say('care.plan.usual')}</p>
      <div className="fields">
        <DayField label={say('care.plan.strungOn')} value={form.strungOn} hint={say('care.plan.hint.strungOn')} error={errorOf('strungOn')} onChange={(strungOn) => { set({ strungOn }); }} />
        <DayField label={say('care.plan.lastTunedOn')} value={form.lastTunedOn} hint={say('care.plan.hint.lastTunedOn')} error={errorOf('lastTunedOn')} onChange={(lastTunedOn) => { set({ lastTunedOn }); }} />
        <SelectField label={say('care.plan.visitsFirstYear')} value={form.visitsFirstYear} options={visits} onChange={(visitsFirstYear) => { set({ visitsFirstYear }); }} />
        <SelectField label={say('care.plan.visitsLater')} value={form.visitsLater} options={visits} onChange={(visitsLater) => { set({ visitsLater }); }} />
        {planFigures.map(([name, unit]) => <Field key={name} label={`${say(`care.plan.${name}`)}${unit === 'mm' ? ' (mm)' : ''}`} value={form[name]} error={errorOf(name)} onChange={(value) => { set({ [name]: value }); }} />)}
      </div>
      <fieldset className="care-lives">
        <legend>{say('care.plan.lives')}</legend>
        <p className="soft small">{say('care.plan.lives.hint')}</p>
        {wornParts.map((part) => <Life key={part} part={part} form={form.lives[part]} errorOf={errorOf} onChange={(turn) => { setLife(part, turn); }} />)}
      </fieldset>
      <Field label={say('care.plan.remark')} value={form.remark} lines={3} maxLength={4000} error={errorOf('remark')} onChange={(remark) => { set({ remark }); }} />
      {caring.error !== null && <ProblemNote problem={caring.error} />}
      <div className="row">
        <button type="submit" className="button button-main" disabled={caring.isPending}>{say('care.keep')}</button>
        <button type="button" className="button" onClick={() => { draft.drop(); onClose(); }}>{say('care.cancel')}</button>
      </div>
    </form>
  );
}

interface LifeProps {
  readonly part: WornPart;
  readonly form: LifeForm;
  readonly errorOf: (path: string) => string | undefined;
  readonly onChange: (turn: Partial<LifeForm>) => void;
}

function Life({ part, form, errorOf, onChange }: LifeProps) {
  const say = useSay();
  const name = say(`care.part.${part}`);
  const unit = say(`care.plan.life.${form.by}`);
  return (
    <div className="care-life">
      <Field label={say('care.plan.life.from', { part: name })} value={form.from} hint={unit} error={errorOf(`${part}.from`)} onChange={(from) => { onChange({ from }); }} />
      <Field label={say('care.plan.life.to', { part: name })} value={form.to} hint={unit} error={errorOf(`${part}.to`)} onChange={(to) => { onChange({ to }); }} />
      <DayField label={say('care.plan.life.since', { part: name })} value={form.since} hint="" error={errorOf(`${part}.since`)} onChange={(since) => { onChange({ since }); }} />
    </div>
  );
}
