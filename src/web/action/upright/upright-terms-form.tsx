import type { ActionTermsDraft } from '#instrument';
import { unitSign } from '#units';
import { useSay } from '../../language/use-say.ts';
import { TermsFrame } from '../../terms/terms-frame.tsx';
import { Field } from '../../ui/field.tsx';
import { useActionForm } from '../terms/use-action-form.ts';
import { type UprightFigure, uprightFigures, uprightFormOf, uprightTermsOf } from './upright-terms.ts';

interface UprightTermsFormProps {
  readonly isBusy: boolean;
  readonly onState: (terms: ActionTermsDraft, onKept: () => void) => void;
  readonly onClose: () => void;
}

/** Butt, tilt, and what is asked of spring and damper. Everything may stay open. */
export function UprightTermsForm({ isBusy, onState, onClose }: UprightTermsFormProps) {
  const say = useSay();
  const fields = useActionForm({ name: 'upright', formOf: uprightFormOf, termsOf: uprightTermsOf, onState });
  const { draft: { typed: form, change }, errorOf } = fields;
  const hints: Partial<Record<UprightFigure, string>> = { tiltDeg: say('upright.terms.tiltHint'), plannedSpringTorqueGMm: say('upright.terms.medianHint'), plannedDamperG: say('upright.terms.medianHint') };
  return (
    <TermsFrame id="upright-terms" title={say('upright.terms')} fields={fields} isBusy={isBusy} onClose={onClose}>
      <p className="soft small">{say('upright.terms.about')}</p>
      <div className="fields">
        {uprightFigures.map(([name, unit]) => (
          <Field key={name} label={`${say(`actionTerms.field.${name}`)} (${unitSign[unit]})`} inputMode="decimal" value={form[name]} hint={hints[name]} error={errorOf(name)} onChange={(value) => { change((now) => ({ ...now, [name]: value })); }} />
        ))}
      </div>
    </TermsFrame>
  );
}
