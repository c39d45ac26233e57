import { type ActionTermsDraft, type QuantityName, quantityOf } from '#instrument';
import { unitSign } from '#units';
import { usePiano } from '../../api/piano.tsx';
import { useFigures, useLocale, useSay } from '../../language/use-say.ts';
import { Field } from '../../ui/field.tsx';
import { SelectField } from '../../ui/select-field.tsx';
import { useActionForm } from '../terms/use-action-form.ts';
import { type RegulationForm, type SpecName, type SpecRegister, type WholeName, followingOf, regulationFormOf, regulationTermsOf, specNames, specRegisters, wholeFigures, withUsual } from './regulation-terms.ts';
import { TermsFrame } from '../../terms/terms-frame.tsx';

interface RegulationTermsFormProps {
  readonly isBusy: boolean;
  readonly onState: (terms: ActionTermsDraft, onKept: () => void) => void;
  readonly onClose: () => void;
}

/** An upright has neither spread nor drop. */
const OF_GRANDS: ReadonlySet<WholeName> = new Set(['spreadMm', 'spreadToleranceMm', 'dropToleranceMm']);

/** What the regulation is to be, by register; one of blow, dip and aftertouch may follow from the others. Everything may stay open. */
export function RegulationTermsForm({ isBusy, onState, onClose }: RegulationTermsFormProps) {
  const say = useSay();
  const figure = useFigures();
  const locale = useLocale();
  const { instrument } = usePiano();
  const fields = useActionForm({ name: 'regulation', formOf: regulationFormOf, termsOf: regulationTermsOf, onState });
  const { draft, errorOf } = fields;
  const { typed: form, change } = draft;
  const usual = (name: QuantityName): string => say('regulation.terms.usualTolerance', { tolerance: figure(quantityOf(name).tolerance ?? 0, 1, 'mm') });
  const hints: Partial<Record<WholeName, string>> = {
    regulationToleranceMm: say('regulation.terms.toleranceHint'), blowToleranceMm: usual('blowMm'), letOffToleranceMm: usual('letOffMm'), dropToleranceMm: usual('dropMm'), checkToleranceMm: usual('checkMm'), spreadToleranceMm: usual('spreadMm'), distanceRatioNatural: say('regulation.terms.ratioHint'), distanceRatioSharp: say('regulation.terms.ratioHint'), lossMm: say('regulation.terms.lossHint'),
  };
  const shown = instrument.kind === 'upright' ? specNames.filter((name) => name !== 'dropMm') : specNames;
  const whole = instrument.kind === 'upright' ? wholeFigures.filter(([name]) => !OF_GRANDS.has(name)) : wholeFigures;
  return (
    <TermsFrame id="regulation-terms" title={say('regulation.terms')} fields={fields} isBusy={isBusy} onClose={onClose}>
      <p className="soft small">{say('regulation.terms.about')}</p>
      <SelectField<RegulationForm['floats']>
        label={say('actionTerms.field.regulationFloats')} value={form.floats}
        options={[{ value: '', label: say('regulation.terms.none') }, ...(['dip', 'blow', 'aftertouch'] as const).map((value) => ({ value, label: say(`actionTerms.regulationFloats.${value}`) }))]}
        onChange={(floats) => { change((now) => ({ ...now, floats })); }}
      />
      <SpecFields form={form} names={shown} errorOf={errorOf} onChange={(register, name, value) => { change((now) => ({ ...now, spec: { ...now.spec, [register]: { ...now.spec[register], [name]: value } } })); }} />
      <div className="row">
        <button type="button" className="button" onClick={() => { change((now) => withUsual(now, instrument.kind, locale)); }}>{say('regulation.terms.usual')}</button>
        <span className="soft small">{say('regulation.terms.usualSource')}</span>
      </div>
      <div className="fields">
        {whole.map(([name, unit]) => (
          <Field key={name} label={`${say(`actionTerms.field.${name}`)}${unitSign[unit] === '' ? '' : ` (${unitSign[unit]})`}`} inputMode="decimal" value={form[name]} hint={hints[name]} error={errorOf(name)} onChange={(value) => { change((now) => ({ ...now, [name]: value })); }} />
        ))}
      </div>
    </TermsFrame>
  );
}

interface SpecFieldsProps {
  readonly form: RegulationForm;
  readonly names: readonly SpecName[];
  readonly errorOf: (path: string) => string | undefined;
  readonly onChange: (register: SpecRegister, name: SpecName, value: string) => void;
}

function SpecFields({ form, names, errorOf, onChange }: SpecFieldsProps) {
  const say = useSay();
  const following = followingOf(form.floats);
  return (
    <div className="spec-fields">
      {specRegisters.map((register, row) => (
        <fieldset key={register} className="spec-register">
          <legend>{say(`register.${register}`)}</legend>
          {names.map((name) => {
            const label = `${say(`quantity.${name}.short`)} (mm)`;
            return name === following
              ? <p key={name} className="soft small">{label}: {say('regulation.terms.follows')}</p>
              : <Field key={name} label={label} inputMode="decimal" value={form.spec[register][name]} error={errorOf(`regulation[${String(row)}].${name}`)} onChange={(value) => { onChange(register, name, value); }} />;
          })}
        </fieldset>
      ))}
    </div>
  );
}
