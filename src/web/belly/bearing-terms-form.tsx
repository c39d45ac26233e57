import type { ScaleTermsDraft } from '#instrument';
import { type UnitId, unitSign } from '#units';
import { usePiano } from '../api/piano.tsx';
import { useSay } from '../language/use-say.ts';
import { useTermsForm } from '../terms/use-terms-form.ts';
import { Field } from '../ui/field.tsx';
import { type BearingTermName, bearingFormOf, bearingTermFigures, bearingTermsOf } from './bearing-terms.ts';
import { TermsFrame } from '../terms/terms-frame.tsx';

interface BearingTermsFormProps {
  readonly isBusy: boolean;
  readonly onState: (terms: ScaleTermsDraft, onKept: () => void) => void;
  readonly onClose: () => void;
}

const signOf = (name: BearingTermName, unit: UnitId): string => (name.endsWith('NPerMm') ? 'N/mm' : unitSign[unit]);

/** What is stated and asked of the bearing in this stay. Everything may stay open: then nothing is judged, and what hangs on it is not told. */
export function BearingTermsForm({ isBusy, onState, onClose }: BearingTermsFormProps) {
  const say = useSay();
  const { scale } = usePiano();
  const fields = useTermsForm({ name: 'scale.bearing', standing: scale, formOf: bearingFormOf, termsOf: bearingTermsOf, onState });
  const { draft, errorOf } = fields;
  const { typed: form, change } = draft;
  return (
    <TermsFrame id="bearing-terms" title={say('belly.terms')} fields={fields} isBusy={isBusy} onClose={onClose}>
      <div className="fields">
        {bearingTermFigures.map(([name, unit]) => (
          <Field key={name} label={`${say(`scale.field.${name}`)} (${signOf(name, unit)})`} inputMode="decimal" value={form[name]} error={errorOf(name)} hint={say(`belly.terms.${name}`)} onChange={(value) => { change((now) => ({ ...now, [name]: value })); }} />
        ))}
      </div>
    </TermsFrame>
  );
}
