import { type ActionTermsDraft, insertMetals } from '#instrument';
import { unitSign } from '#units';
import { usualInsertGPerMm3 } from '#workshop';
import { useLocale, useSay } from '../../language/use-say.ts';
import { Field } from '../../ui/field.tsx';
import { SelectField } from '../../ui/select-field.tsx';
import { shownDensity } from '../terms/densities.ts';
import { useActionForm } from '../terms/use-action-form.ts';
import { type LeadFigureName, type LeadsForm, NO_STRETCH, leadFigures, leadsFormOf, leadsTermsOf } from './leads-terms.ts';
import { TermsFrame } from '../../terms/terms-frame.tsx';

interface LeadsTermsFormProps {
  readonly isBusy: boolean;
  readonly onState: (terms: ActionTermsDraft, onKept: () => void) => void;
  readonly onClose: () => void;
}

/** Drills, spacing, keep-outs, metal: what the leads of this piano are worked out by. Everything may stay open: then it is as usual, and told. */
export function LeadsTermsForm({ isBusy, onState, onClose }: LeadsTermsFormProps) {
  const say = useSay();
  const fields = useActionForm({ name: 'leads', formOf: leadsFormOf, termsOf: leadsTermsOf, onState });
  const { draft, errorOf } = fields;
  const { typed: form, change } = draft;
  const hints: Partial<Record<LeadFigureName, string>> = { newHoleCostG: say('leads.terms.cost.hint'), mostLeads: say('leads.terms.most.hint'), leadGPerMm3: say('leads.terms.density.hint') };
  const setStretch = (index: number, part: Partial<typeof NO_STRETCH>): void => {
    change((now) => ({ ...now, keepOuts: now.keepOuts.map((one, at) => (at === index ? { ...one, ...part } : one)) }));
  };
  return (
    <TermsFrame id="leads-terms" title={say('leads.terms')} fields={fields} isBusy={isBusy} onClose={onClose}>
      <p className="soft small">{say('leads.terms.about')}</p>
      <Field label={`${say('actionTerms.field.drillsMm')} (mm)`} value={form.drills} hint={say('leads.terms.list.hint')} error={errorOf('drillsMm')} onChange={(drills) => { change((now) => ({ ...now, drills })); }} />
      <Field label={`${say('actionTerms.field.trimDrillsMm')} (mm)`} value={form.trimDrills} hint={say('leads.terms.trim.hint')} error={errorOf('trimDrillsMm')} onChange={(trimDrills) => { change((now) => ({ ...now, trimDrills })); }} />
      <InsertFields form={form} errorOf={errorOf} onChange={change} />
      <div className="fields">
        {leadFigures.map(([name, unit]) => (
          <Field
            key={name} label={`${say(`actionTerms.field.${name}`)}${unitSign[unit] === '' ? '' : ` (${unitSign[unit]})`}`} inputMode="decimal" value={form[name]} hint={hints[name]} error={errorOf(name)}
            onChange={(typed) => { change((now) => ({ ...now, [name]: typed })); }}
          />
        ))}
      </div>
      <fieldset className="choice">
        <legend>{say('actionTerms.field.keepOuts')}</legend>
        <p className="soft small">{say('leads.terms.keepOuts.hint')}</p>
        <ol className="lead-stretches">
          {form.keepOuts.map((stretch, index) => {
            const path = `keepOuts[${String(index)}]`;
            return (
              <li key={path} className="row">
                <Field width="11rem" label={say('leads.terms.keepOut.from', { number: index + 1 })} inputMode="decimal" value={stretch.from} error={errorOf(`${path}.fromMm`)} onChange={(from) => { setStretch(index, { from }); }} />
                <Field width="11rem" label={say('leads.terms.keepOut.to', { number: index + 1 })} inputMode="decimal" value={stretch.to} error={errorOf(`${path}.toMm`)} onChange={(to) => { setStretch(index, { to }); }} />
              </li>
            );
          })}
        </ol>
        {form.keepOuts.length < 12 && <button type="button" className="button" onClick={() => { change((now) => ({ ...now, keepOuts: [...now.keepOuts, NO_STRETCH] })); }}>{say('leads.terms.keepOut.more')}</button>}
      </fieldset>
    </TermsFrame>
  );
}

interface InsertFieldsProps {
  readonly form: LeadsForm;
  readonly errorOf: (path: string) => string | undefined;
  readonly onChange: (turn: (form: LeadsForm) => LeadsForm) => void;
}

/** What new inserts are of: lead, or another metal by its density. */
function InsertFields({ form, errorOf, onChange }: InsertFieldsProps) {
  const say = useSay();
  const locale = useLocale();
  const usual = form.insertMetal === '' || form.insertMetal === 'other' ? undefined : usualInsertGPerMm3[form.insertMetal];
  return (
    <div className="fields">
      <SelectField<LeadsForm['insertMetal']>
        label={say('actionTerms.field.insertMetal')} value={form.insertMetal} hint={say('leads.terms.insert.hint')}
        options={[{ value: '', label: say('actionTerms.insertMetal.lead') }, ...insertMetals.map((value) => ({ value, label: say(`actionTerms.insertMetal.${value}`) }))]}
        onChange={(insertMetal) => { onChange((now) => ({ ...now, insertMetal, insertGPerMm3: '' })); }}
      />
      {form.insertMetal !== '' && (
        <Field
          label={`${say('actionTerms.field.insertGPerMm3')} (${unitSign.gcm3})`} inputMode="decimal" value={form.insertGPerMm3} error={errorOf('insertGPerMm3')}
          hint={usual === undefined ? say('leads.terms.insert.density') : say('leads.terms.insert.usual', { density: shownDensity(usual, locale) })}
          onChange={(insertGPerMm3) => { onChange((now) => ({ ...now, insertGPerMm3 })); }}
        />
      )}
    </div>
  );
}
