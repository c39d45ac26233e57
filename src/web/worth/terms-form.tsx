import { ratesOn } from '#estimate';
import { roundings } from '#money';
import { type CardOf, type Estimate, taxRegimes } from '#workshop';
import { type SyntheticEvent, useMemo, useState } from 'react';
import { usePiano } from '../api/piano.tsx';
import { useDraft } from '../kept/draft.ts';
import { TakenUp } from '../kept/taken-up.tsx';
import { useFigures, useLocale, useSay } from '../language/use-say.ts';
import { ProblemNote } from '../shell/problem-note.tsx';
import { errorAt } from '../terms/error-at.ts';
import { DayField } from '../ui/day-field.tsx';
import { dayHere } from '../ui/day-here.ts';
import { Field } from '../ui/field.tsx';
import { SelectField } from '../ui/select-field.tsx';
import { MoneyField } from './money-field.tsx';
import { type EstimateForm, estimateFormOf, estimateOf } from './terms-draft.ts';
import { useStateEstimate } from './use-worth.ts';
import { WaysFields } from './ways-fields.tsx';

interface TermsFormProps {
  readonly estimate: Estimate | null;
  /** The shop’s last estimate, whose rates a new one begins with. */
  readonly last: Estimate | undefined;
  /** The rates of the shop, before those of its last estimate. */
  readonly rates: CardOf<'rates'> | undefined;
  readonly onClose: () => void;
}

type Typed = { readonly [N in keyof EstimateForm]: EstimateForm[N] extends string ? N : never }[keyof EstimateForm];

/** Rates, price, tax and the ways of the estimate. Half-filled it stays on the device. */
export function TermsForm({ estimate, last, rates: ofShop, onClose }: TermsFormProps) {
  const say = useSay();
  const locale = useLocale();
  const figure = useFigures();
  const { id, cycle } = usePiano();
  const draft = useDraft<EstimateForm>(`worth.terms.${id}.${String(cycle)}`, () => estimateFormOf(estimate, last, { say, locale }, ofShop));
  const { typed: form, change } = draft;
  const [isAsked, setAsked] = useState(false);
  const stating = useStateEstimate();
  const result = useMemo(() => estimateOf(form, estimate, locale), [form, estimate, locale]);
  const issues = isAsked && !result.ok ? result.issues : [];
  const errorOf = (path: string): string | undefined => errorAt(issues, path, say, locale);
  const set = (part: Partial<EstimateForm>): void => { change((now) => ({ ...now, ...part })); };
  const submit = (event: SyntheticEvent): void => {
    event.preventDefault();
    setAsked(true);
    if (result.ok) stating.mutate({ estimate: result.value, onKept: () => { draft.drop(); onClose(); } });
  };
  const shared = (name: Typed) => ({ label: say(`worth.terms.${name}` as 'worth.terms.currency', { currency: form.currency }), value: form[name], error: errorOf(name), onChange: (typed: string): void => { set({ [name]: typed }); } });
  const text = (name: Typed, hint?: string) => <Field key={name} {...shared(name)} inputMode="text" hint={hint} />;
  const number = (name: Typed, hint?: string) => <Field key={name} {...shared(name)} inputMode="decimal" hint={hint} />;
  const money = (name: Typed, hint?: string) => <MoneyField key={name} {...shared(name)} currency={form.currency.trim().toUpperCase()} hint={hint} />;
  const rates = ratesOn(dayHere()).map(({ place, ratePct, since }) => say('worth.rates.one', { place, pct: figure(ratePct, Number.isInteger(ratePct) ? 0 : 1), day: since })).join('; ');
  return (
    <form className="panel" onSubmit={submit} noValidate aria-labelledby="worth-terms">
      <h2 id="worth-terms">{say('worth.terms')}</h2>
      {draft.isTakenUp && <TakenUp />}
      <div className="fields">
        {text('currency')}
        <SelectField label={say('worth.terms.rounding')} value={form.rounding} options={roundings.map((value) => ({ value, label: say(`worth.rounding.${value}`) }))} onChange={(rounding) => { set({ rounding }); }} />
        {money('rateMinor')}
        {money('wageMinor')}
        <SelectField label={say('worth.terms.owner')} value={form.owner} options={(['customer', 'shop'] as const).map((value) => ({ value, label: say(`worth.owner.${value}`) }))} onChange={(owner) => { set({ owner }); }} />
        {form.owner === 'shop' && money('purchaseMinor', say('worth.terms.purchaseHint'))}
        {form.owner === 'shop' && <DayField label={say('worth.terms.purchasedOn')} value={form.purchasedOn} hint={errorOf('purchasedOn') ?? ''} onChange={(purchasedOn) => { set({ purchasedOn }); }} />}
        {number('overheadPct')}
        <SelectField label={say('worth.terms.contingency')} value={form.contingency} options={(['none', 'pct', 'p80', 'p90'] as const).map((value) => ({ value, label: say(`worth.contingency.${value}`) }))} onChange={(contingency) => { set({ contingency }); }} />
        {form.contingency === 'pct' && number('contingencyPct')}
        <SelectField label={say('worth.terms.pricing')} value={form.pricing} options={(['markup', 'margin'] as const).map((value) => ({ value, label: say(`worth.pricing.${value}`) }))} onChange={(pricing) => { set({ pricing }); }} />
        {number('pricingPct')}
        <SelectField label={say('worth.terms.regime')} value={form.regime} options={taxRegimes.map((value) => ({ value, label: say(`worth.regime.${value}`) }))} onChange={(regime) => { set({ regime }); }} />
        {number('ratePct')}
        {text('source')}
        <DayField label={say('worth.terms.asOf')} value={form.asOf} hint={errorOf('asOf') ?? say('worth.terms.asOfHint')} onChange={(asOf) => { set({ asOf }); }} />
        {number('correlation', say('worth.terms.correlationHint'))}
        {number('annualRatePct')}
      </div>
      <p className="soft small">{say('worth.rates', { rates })}</p>
      <WaysFields ways={form.ways} currency={form.currency.trim().toUpperCase()} errorOf={errorOf} onChange={(ways) => { set({ ways }); }} />
      <Field label={say('worth.terms.remark')} value={form.remark} lines={2} maxLength={2000} onChange={(remark) => { set({ remark }); }} />
      {issues.length > 0 && <p className="field-error" role="alert">{say('worth.wrong', { count: issues.length })}</p>}
      {stating.error !== null && <ProblemNote problem={stating.error} />}
      <div className="row">
        <button type="submit" className="button button-main" disabled={stating.isPending}>{say('worth.terms.keep')}</button>
        <button type="button" className="button" onClick={() => { draft.drop(); onClose(); }}>{say('action.intent.cancel')}</button>
      </div>
    </form>
  );
}
