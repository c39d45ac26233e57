import { usualWear } from '#action';
import type { ActionTermsDraft } from '#instrument';
import { unitSign } from '#units';
import { USUAL_LEAST_FELT_MM } from '#workshop';
import { useFigures, useSay } from '../../language/use-say.ts';
import { Field } from '../../ui/field.tsx';
import { SelectField } from '../../ui/select-field.tsx';
import { useActionForm } from '../terms/use-action-form.ts';
import { type HammerForm, type WearName, hammerFormOf, hammerTermsOf, wearFigures } from './hammer-terms.ts';
import { TermsFrame } from '../../terms/terms-frame.tsx';

interface HammerTermsFormProps {
  readonly isBusy: boolean;
  readonly onState: (terms: ActionTermsDraft, onKept: () => void) => void;
  readonly onClose: () => void;
}

/** How the hammers are used and what the shop reckons with. Everything may stay open. */
export function HammerTermsForm({ isBusy, onState, onClose }: HammerTermsFormProps) {
  const say = useSay();
  const figure = useFigures();
  const fields = useActionForm({ name: 'hammers', formOf: hammerFormOf, termsOf: hammerTermsOf, onState });
  const { draft, errorOf } = fields;
  const { typed: form, change } = draft;
  const usual = ([low, high]: readonly [number, number]): string => say('hammers.terms.usual', { low: figure(low, 0), high: figure(high, 0) });
  const hints: Partial<Record<WearName, string>> = {
    reshapeHours: usual(usualWear.reshapeHours), mostReshapes: usual(usualWear.mostReshapes),
    leastFeltBassMm: say('hammers.terms.feltHint', { felt: figure(USUAL_LEAST_FELT_MM.bass, 0, 'mm') }), leastFeltTrebleMm: say('hammers.terms.feltHint', { felt: figure(USUAL_LEAST_FELT_MM.treble, 1, 'mm') }),
  };
  return (
    <TermsFrame id="hammer-terms" title={say('hammers.terms')} fields={fields} isBusy={isBusy} onClose={onClose}>
      <p className="soft small">{say('hammers.terms.about')}</p>
      <div className="fields">
        <SelectField<HammerForm['hammerUse']>
          label={say('actionTerms.field.hammerUse')} value={form.hammerUse}
          options={[{ value: '', label: say('story.notStated') }, ...(['home', 'teaching', 'concert'] as const).map((value) => ({ value, label: say(`actionTerms.hammerUse.${value}`) }))]}
          onChange={(hammerUse) => { change((now) => ({ ...now, hammerUse })); }}
        />
        {wearFigures.map(([name, unit]) => (
          <Field key={name} label={`${say(`actionTerms.field.${name}`)}${unitSign[unit] === '' ? '' : ` (${unitSign[unit]})`}`} inputMode="decimal" value={form[name]} hint={hints[name]} error={errorOf(name)} onChange={(value) => { change((now) => ({ ...now, [name]: value })); }} />
        ))}
      </div>
    </TermsFrame>
  );
}
