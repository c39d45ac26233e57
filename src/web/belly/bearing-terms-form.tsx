import type { ScaleTermsDraft } from '#instrument';
import { type UnitId, unitSign } from '#units';
import { usePiano } from '../api/piano.tsx';
import { TakenUp } from '../kept/taken-up.tsx';
import { useSay } from '../language/use-say.ts';
import { useTermsForm } from '../strings/use-terms-form.ts';
import { Field } from '../ui/field.tsx';
import { type BearingTermName, bearingFormOf, bearingTermFigures, bearingTermsOf } from './bearing-terms.ts';

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
  const { draft, errorOf, wrong, submit } = useTermsForm({ name: 'scale.bearing', standing: scale, formOf: bearingFormOf, termsOf: bearingTermsOf, onState });
  const { typed: form, change } = draft;
  return (
    <form className="panel" onSubmit={submit} noValidate aria-labelledby="bearing-terms">
      <h2 id="bearing-terms">{say('belly.terms')}</h2>
      {draft.isTakenUp && <TakenUp />}
      <div className="fields">
        {bearingTermFigures.map(([name, unit]) => (
          <Field key={name} label={`${say(`scale.field.${name}`)} (${signOf(name, unit)})`} inputMode="decimal" value={form[name]} error={errorOf(name)} hint={say(`belly.terms.${name}`)} onChange={(value) => { change((now) => ({ ...now, [name]: value })); }} />
        ))}
      </div>
      {wrong > 0 && <p className="field-error" role="alert">{say('strings.terms.wrong', { count: wrong })}</p>}
      <div className="row">
        <button type="submit" className="button button-main" disabled={isBusy}>{say('strings.terms.state')}</button>
        <button type="button" className="button" onClick={() => { draft.drop(); onClose(); }}>{say('action.intent.cancel')}</button>
      </div>
    </form>
  );
}
