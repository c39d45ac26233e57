import type { ScaleTermsDraft } from '#instrument';
import { explainIssue } from '#text';
import { type UnitId, unitSign } from '#units';
import { type SyntheticEvent, useMemo, useState } from 'react';
import { usePiano } from '../api/piano.tsx';
import { useDraft } from '../kept/draft.ts';
import { TakenUp } from '../kept/taken-up.tsx';
import { useLocale, useSay } from '../language/use-say.ts';
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
  const locale = useLocale();
  const { id, cycle, scale } = usePiano();
  const draft = useDraft(`scale.bearing.${id}.${String(cycle)}`, () => bearingFormOf(scale, locale));
  const { typed: form, change } = draft;
  const [isAsked, setAsked] = useState(false);
  const result = useMemo(() => bearingTermsOf(form, scale, locale), [form, scale, locale]);
  const errorOf = (path: string): string | undefined => {
    const wrong = isAsked && !result.ok ? result.issues.filter((issue) => issue.path === path) : [];
    return wrong.length === 0 ? undefined : wrong.map((issue) => explainIssue(say, issue, locale)).join(' ');
  };
  const submit = (event: SyntheticEvent): void => {
    event.preventDefault();
    setAsked(true);
    if (result.ok) onState(result.value, draft.drop);
  };
  return (
    <form className="panel" onSubmit={submit} noValidate aria-labelledby="bearing-terms">
      <h2 id="bearing-terms">{say('belly.terms')}</h2>
      {draft.isTakenUp && <TakenUp />}
      <div className="fields">
        {bearingTermFigures.map(([name, unit]) => (
          <Field key={name} label={`${say(`scale.field.${name}`)} (${signOf(name, unit)})`} inputMode="decimal" value={form[name]} error={errorOf(name)} hint={say(`belly.terms.${name}`)} onChange={(value) => { change((now) => ({ ...now, [name]: value })); }} />
        ))}
      </div>
      {isAsked && !result.ok && <p className="field-error" role="alert">{say('strings.terms.wrong', { count: result.issues.length })}</p>}
      <div className="row">
        <button type="submit" className="button button-main" disabled={isBusy}>{say('strings.terms.state')}</button>
        <button type="button" className="button" onClick={() => { draft.drop(); onClose(); }}>{say('action.intent.cancel')}</button>
      </div>
    </form>
  );
}
