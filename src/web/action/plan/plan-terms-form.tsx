import type { ActionTermsDraft } from '#instrument';
import { unitSign } from '#units';
import { useMemo } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { useSay } from '../../language/use-say.ts';
import { Field } from '../../ui/field.tsx';
import { SelectField } from '../../ui/select-field.tsx';
import { useActionForm } from '../terms/use-action-form.ts';
import { planFigures, planFormOf, planTermsOf } from './plan-terms.ts';
import { TermsFrame } from '../../terms/terms-frame.tsx';

interface PlanTermsFormProps {
  readonly isBusy: boolean;
  readonly onState: (terms: ActionTermsDraft, onKept: () => void) => void;
  readonly onClose: () => void;
}

/** What the plan reckons with: hammers, ratios, friction and parts. Everything may stay open: then it stays as found, and that is told. */
export function PlanTermsForm({ isBusy, onState, onClose }: PlanTermsFormProps) {
  const say = useSay();
  const { compass } = usePiano();
  const ways = useMemo(() => ({ formOf: planFormOf(compass), termsOf: planTermsOf(compass) }), [compass]);
  const fields = useActionForm({ name: 'plan', ...ways, onState });
  const { draft, errorOf } = fields;
  const { typed: form, change } = draft;
  return (
    <TermsFrame id="plan-terms" title={say('plan.terms')} fields={fields} isBusy={isBusy} onClose={onClose}>
      <p className="soft small">{say('plan.terms.about')}</p>
      <div className="fields">
        <SelectField
          label={say('actionTerms.field.hammerCurve')} value={form.hammerCurve}
          options={[{ value: '', label: say('plan.terms.asFound') }, ...(['anchors', 'smoothed'] as const).map((value) => ({ value, label: say(`actionTerms.hammerCurve.${value}`) }))]}
          onChange={(hammerCurve) => { change((now) => ({ ...now, hammerCurve })); }}
        />
        {form.hammerCurve === 'smoothed' && <Field label={say('actionTerms.field.hammerLambda')} inputMode="decimal" value={form.hammerLambda} error={errorOf('hammerLambda')} hint={say('plan.terms.lambda')} onChange={(hammerLambda) => { change((now) => ({ ...now, hammerLambda })); }} />}
      </div>
      {form.hammerCurve === 'anchors' && (
        <fieldset className="choice">
          <legend>{say('actionTerms.field.hammerAnchors')}</legend>
          <p className="soft small">{say('plan.terms.anchors')}</p>
          {errorOf('hammerAnchors') !== undefined && <p className="field-error">{errorOf('hammerAnchors')}</p>}
          <ol className="anchors">
            {form.anchors.map((anchor, index) => {
              const set = (part: Partial<typeof anchor>): void => { change((now) => ({ ...now, anchors: now.anchors.map((one, at) => (at === index ? { ...one, ...part } : one)) })); };
              const path = `hammerAnchors[${String(index)}]`;
              return (
                <li key={path} className="row">
                  <Field width="9rem" label={say('action.intent.anchorKey')} required value={anchor.key} error={errorOf(`${path}.key`)} onChange={(key) => { set({ key }); }} />
                  <Field width="9rem" label={say('plan.terms.anchorWeight')} required inputMode="decimal" value={anchor.weight} error={errorOf(`${path}.weightG`)} onChange={(weight) => { set({ weight }); }} />
                </li>
              );
            })}
          </ol>
        </fieldset>
      )}
      <div className="fields">
        {planFigures.map(([name, unit]) => (
          <Field
            key={name} label={`${say(`actionTerms.field.${name}`)}${signOf(name, unit)}`} inputMode="decimal" value={form[name]} error={errorOf(name)}
            onChange={(typed) => { change((now) => ({ ...now, [name]: typed })); }}
          />
        ))}
      </div>
    </TermsFrame>
  );
}

const signOf = (name: string, unit: keyof typeof unitSign): string => (name.endsWith('GMm2') ? ' (g·mm²)' : unitSign[unit] === '' ? '' : ` (${unitSign[unit]})`);
