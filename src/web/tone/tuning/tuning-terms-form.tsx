import { pitchClasses, temperamentNames } from '#instrument';
import { unitSign } from '#units';
import { useMemo } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { useSay } from '../../language/use-say.ts';
import { TermsFrame } from '../../terms/terms-frame.tsx';
import { useTermsForm } from '../../terms/use-terms-form.ts';
import { DayField } from '../../ui/day-field.tsx';
import { Field } from '../../ui/field.tsx';
import { SelectField } from '../../ui/select-field.tsx';
import { type TuningTermsForm as Form, tuningFigures, tuningFormOf, tuningTermsOf } from './tuning-terms.ts';
import { useStateTuning } from './use-passes.ts';

/** What is stated and asked of the tuning. Everything may stay open. */
export function TuningTermsForm({ onClose }: { readonly onClose: () => void }) {
  const say = useSay();
  const { tuning, compass } = usePiano();
  const stating = useStateTuning();
  const [formOf, termsOf] = useMemo(() => [tuningFormOf(compass), tuningTermsOf(compass)] as const, [compass]);
  const fields = useTermsForm({ name: 'tuning', standing: tuning, formOf, termsOf, onState: (terms, onKept) => { stating.mutate({ terms, onKept: () => { onKept(); onClose(); } }); } });
  const { draft: { typed: form, change }, errorOf } = fields;
  const set = (part: Partial<Form>): void => { change((now) => ({ ...now, ...part })); };
  const none = { value: '' as const, label: say('story.notStated') };
  return (
    <TermsFrame id="tuning-terms" title={say('tuning.terms')} fields={fields} isBusy={stating.isPending} onClose={onClose}>
      <div className="fields">
        <SelectField<Form['temperament']> label={say('tuning.field.temperament')} value={form.temperament} hint={say('tuning.hint.temperament')} options={[none, ...temperamentNames.map((value) => ({ value, label: say(`tuning.temperament.${value}`) }))]} onChange={(temperament) => { set({ temperament }); }} />
        <SelectField<Form['root']> label={say('tuning.field.root')} value={form.root} hint={say('tuning.hint.root')} options={[none, ...pitchClasses.map((value) => ({ value, label: value }))]} onChange={(root) => { set({ root }); }} />
        <DayField label={say('tuning.field.strungOn')} value={form.strungOn} hint={say('tuning.hint.strungOn')} onChange={(strungOn) => { set({ strungOn }); }} />
        {tuningFigures.map(([name, unit]) => (
          <Field key={name} label={`${say(`tuning.field.${name}`)}${unitSign[unit] === '' ? '' : ` (${unitSign[unit]})`}`} inputMode="decimal" value={form[name]} error={errorOf(name)} {...(name === 'smoothness' ? { hint: say('tuning.hint.smoothness') } : {})} onChange={(value) => { set({ [name]: value }); }} />
        ))}
      </div>
      <Field label={say('tuning.field.octaves')} value={form.octaves} error={errorOf('octaves')} hint={say('tuning.hint.octaves')} onChange={(octaves) => { set({ octaves }); }} />
      <Field label={say('tuning.field.remark')} value={form.remark} lines={2} maxLength={4000} onChange={(remark) => { set({ remark }); }} />
    </TermsFrame>
  );
}
