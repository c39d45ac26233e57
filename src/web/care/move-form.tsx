import type { CareOf } from '#workshop';
import { usePiano } from '../api/piano.tsx';
import { TakenUp } from '../kept/taken-up.tsx';
import { useLocale, useSay } from '../language/use-say.ts';
import { ProblemNote } from '../shell/problem-note.tsx';
import { ConditionFields } from '../shop/condition-fields.tsx';
import { useDraftForm } from '../terms/use-draft-form.ts';
import { unitSign } from '#units';
import { DayField } from '../ui/day-field.tsx';
import { dayHere } from '../ui/day-here.ts';
import { Field } from '../ui/field.tsx';
import { Note } from '../ui/note.tsx';
import { SelectField } from '../ui/select-field.tsx';
import { useCaring } from './care-queries.ts';
import { useMovers } from './use-movers.ts';
import { type MoveForm as Form, arrivalFigures, loadFigures, moveFormOf, moveOf, wayFigures } from './move-draft.ts';

/** A move: when and where, loads, the way, wrapping, the air on arrival, condition before and after. Half-filled it stays on the device. */
export function MoveForm({ move, onClose }: { readonly move: CareOf<'move'> | undefined; readonly onClose: () => void }) {
  const say = useSay();
  const locale = useLocale();
  const { id } = usePiano();
  const caring = useCaring();
  const { draft, set, errorOf, submit } = useDraftForm({
    name: `care.move.${id}.${move?.id ?? 'new'}`,
    base: (): Form => moveFormOf(move, dayHere(), locale),
    stated: (typed) => moveOf(typed, locale),
    onState: (stated, drop) => {
      const onKept = (): void => { drop(); onClose(); };
      caring.mutate(move === undefined ? { kind: 'add', draft: stated, onKept } : { kind: 'change', id: move.id, change: stated, onKept });
    },
  });
  const { typed: form, change } = draft;
  const movers = useMovers(form.mover);
  const sign = (unit: 'mm' | 'degC' | 'pct' | '1'): string => (unit === '1' ? '' : ` (${unitSign[unit]})`);
  return (
    <form onSubmit={submit} noValidate aria-labelledby="care-move-form" className="care-form">
      <h3 id="care-move-form">{say('care.move.form')}</h3>
      {draft.isTakenUp && <TakenUp />}
      <Note tone="warn"><p>{say('sheet.move.caution')}</p></Note>
      <div className="fields">
        <DayField label={say('care.move.on')} value={form.on} hint="" error={errorOf('on')} onChange={(on) => { set({ on }); }} />
        <SelectField label={say('care.move.status')} value={form.status} options={(['planned', 'done', 'cancelled'] as const).map((value) => ({ value, label: say(`care.move.status.${value}`) }))} onChange={(status) => { set({ status }); }} />
        <Field label={say('care.move.fromPlace')} value={form.fromPlace} maxLength={200} hint={say('care.move.hint.place')} error={errorOf('fromPlace')} onChange={(fromPlace) => { set({ fromPlace }); }} />
        <Field label={say('care.move.toPlace')} value={form.toPlace} maxLength={200} error={errorOf('toPlace')} onChange={(toPlace) => { set({ toPlace }); }} />
        <SelectField label={say('care.move.mover')} value={form.mover} options={movers} hint={say('care.move.hint.mover')} error={errorOf('mover')} onChange={(mover) => { set({ mover }); }} />
        <SelectField label={say('care.move.storey')} value={form.storey} options={(['none', 'ground', 'cellar', 'upper'] as const).map((value) => ({ value, label: say(`care.storey.${value}`) }))} onChange={(storey) => { set({ storey }); }} />
        {[...wayFigures, ...loadFigures].map(([name, unit]) => <Field key={name} label={`${say(`care.move.${name}`)}${sign(unit)}`} value={form[name]} error={errorOf(name)} onChange={(value) => { set({ [name]: value }); }} />)}
      </div>
      <Field label={say('care.move.wrap')} value={form.wrap} lines={2} maxLength={2000} error={errorOf('wrap')} onChange={(wrap) => { set({ wrap }); }} />
      <fieldset>
        <legend>{say('care.move.arrival')}</legend>
        <p className="soft small">{say('care.move.arrival.caution')}</p>
        <div className="fields">
          {arrivalFigures.map(([name, unit]) => <Field key={name} label={`${say(`care.move.arrival.${name}`)}${sign(unit)}`} value={form.arrival[name]} error={errorOf(`arrival.${name}`)} onChange={(value) => { change((now) => ({ ...now, arrival: { ...now.arrival, [name]: value } })); }} />)}
        </div>
      </fieldset>
      {(['before', 'after'] as const).map((side) => <ConditionFields key={side} side={side} form={form[side]} errorOf={errorOf} onChange={(turn) => { change((now) => ({ ...now, [side]: turn(now[side]) })); }} />)}
      <Field label={say('care.field.remark')} value={form.remark} lines={2} maxLength={4000} error={errorOf('remark')} onChange={(remark) => { set({ remark }); }} />
      {caring.error !== null && <ProblemNote problem={caring.error} />}
      <div className="row">
        <button type="submit" className="button button-main" disabled={caring.isPending}>{say('care.keep')}</button>
        <button type="button" className="button" onClick={() => { draft.drop(); onClose(); }}>{say('care.cancel')}</button>
      </div>
    </form>
  );
}
