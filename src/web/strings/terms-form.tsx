import type { ScaleTermsDraft } from '#instrument';
import { unitSign } from '#units';
import { usePiano } from '../api/piano.tsx';
import { useSay } from '../language/use-say.ts';
import { Field } from '../ui/field.tsx';
import { SelectField } from '../ui/select-field.tsx';
import { formOf, termFigures, termsOf } from './terms-draft.ts';
import { useTermsForm } from '../terms/use-terms-form.ts';
import { WireFields } from './wire-fields.tsx';
import { TermsFrame } from '../terms/terms-frame.tsx';

interface TermsFormProps {
  readonly isBusy: boolean;
  readonly onState: (terms: ScaleTermsDraft, onKept: () => void) => void;
  readonly onClose: () => void;
}

const choices = {
  strengthModel: ['astm-a228-min', 'en-10270-1-sm', 'power-law'],
  wrapMetal: ['copper', 'iron'],
  wireSeries: ['inch', 'metric', 'shop'],
} as const;

/** What is stated and asked of the strings of this stay. Everything may stay open: then it is told what was assumed instead, and nothing is judged. */
export function TermsForm({ isBusy, onState, onClose }: TermsFormProps) {
  const say = useSay();
  const { scale } = usePiano();
  const fields = useTermsForm({ name: 'scale.strings', standing: scale, formOf, termsOf, onState });
  const { draft, errorOf } = fields;
  const { typed: form, change } = draft;
  const select = (name: keyof typeof choices, hint: string) => (
    <SelectField<string>
      label={say(`scale.field.${name}`)} value={form[name]} hint={hint}
      options={[{ value: '', label: say('story.notStated') }, ...choices[name].map((value) => ({ value, label: say(`scale.${name}.${value}` as 'scale.wrapMetal.iron') }))]}
      onChange={(value) => { change((now) => ({ ...now, [name]: value })); }}
    />
  );
  return (
    <TermsFrame id="strings-terms" title={say('strings.terms')} fields={fields} isBusy={isBusy} onClose={onClose}>
      <div className="fields">
        {termFigures.slice(0, 2).map(([name, unit]) => <Field key={name} label={`${say(`scale.field.${name}`)} (${unitSign[unit]})`} inputMode="decimal" value={form[name]} error={errorOf(name)} hint={say(`strings.terms.${name}`)} onChange={(value) => { change((now) => ({ ...now, [name]: value })); }} />)}
        {select('strengthModel', say('strings.terms.strengthModel'))}
        {select('wireSeries', say('strings.terms.wireSeries'))}
        {select('wrapMetal', say('strings.terms.wrapMetal'))}
        {termFigures.slice(2).map(([name, unit]) => <Field key={name} label={`${say(`scale.field.${name}`)}${unitSign[unit] === '' ? '' : ` (${unitSign[unit]})`}`} inputMode="decimal" value={form[name]} error={errorOf(name)} hint={say(`strings.terms.${name}`)} onChange={(value) => { change((now) => ({ ...now, [name]: value })); }} />)}
      </div>
      <WireFields wires={form.wires} errorOf={errorOf} onChange={(wires) => { change((now) => ({ ...now, wires })); }} />
      <Field label={say('scale.field.remark')} value={form.remark} lines={2} maxLength={4000} onChange={(remark) => { change((now) => ({ ...now, remark })); }} />
    </TermsFrame>
  );
}
