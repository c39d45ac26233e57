import { currencyOf, formatMoney } from '#money';
import type { Issue } from '#result';
import { useQuery } from '@tanstack/react-query';
import { type SyntheticEvent, useState } from 'react';
import { useFigures, useLocale, useSay } from '../language/use-say.ts';
import { ProblemNote } from '../shell/problem-note.tsx';
import { shopQuery } from '../shop/shop-queries.ts';
import { addCard } from '../shop/shop-writing.ts';
import { errorAt } from '../terms/error-at.ts';
import { Field } from '../ui/field.tsx';
import { MoneyField } from './money-field.tsx';
import { type RatesForm, ratesFormOf, ratesOf, ratesOfForm } from './rates-draft.ts';

/** What the shop reckons with: currency, price of an hour, what is paid out for it, overhead. A new estimate begins with it. */
export default function RatesPanel() {
  const say = useSay();
  const locale = useLocale();
  const figure = useFigures();
  const { data } = useQuery(shopQuery({ kinds: ['rates'] }));
  const [form, setForm] = useState<RatesForm>();
  const [issues, setIssues] = useState<readonly Issue[]>([]);
  const [problem, setProblem] = useState<unknown>();
  const rates = ratesOf(data ?? [], 'shop');
  const currency = currencyOf(rates?.currency ?? '');
  const money = (minor: number): string => (currency === undefined ? '' : formatMoney({ minor, currency }, locale));
  const errorOf = (path: string): string | undefined => errorAt(issues, path, say, locale);
  const submit = (event: SyntheticEvent): void => {
    event.preventDefault();
    if (form === undefined) return;
    const stated = ratesOfForm(form, locale);
    setIssues(stated.ok ? [] : stated.issues);
    setProblem(undefined);
    if (stated.ok) addCard(stated.value).then(() => { setForm(undefined); }, setProblem);
  };
  const set = (part: Partial<RatesForm>): void => { setForm((now) => (now === undefined ? now : { ...now, ...part })); };
  const code = form?.currency.trim().toUpperCase() ?? '';
  return (
    <section className="panel" aria-labelledby="settings-rates">
      <h2 id="settings-rates">{say('bench.rates')}</h2>
      <p className="soft">{say('bench.rates.hint')}</p>
      {data !== undefined && (form === undefined ? (
        <>
          <p>{rates === undefined ? say('bench.rates.none') : say('bench.rates.told', { rate: money(rates.rateMinor), wage: money(rates.wageMinor), overhead: figure(rates.overheadPct, 1) })}</p>
          <div><button type="button" className="button" onClick={() => { setForm(ratesFormOf(rates, locale)); }}>{say('bench.rates.set')}</button></div>
        </>
      ) : (
        <form className="card-form" onSubmit={submit} noValidate>
          <Field label={say('shop.field.currency')} value={form.currency} maxLength={3} error={errorOf('currency')} onChange={(typed) => { set({ currency: typed }); }} />
          <MoneyField label={say('shop.field.rateMinor')} value={form.rate} currency={code} error={errorOf('rateMinor')} onChange={(rate) => { set({ rate }); }} />
          <MoneyField label={say('shop.field.wageMinor')} value={form.wage} currency={code} error={errorOf('wageMinor')} onChange={(wage) => { set({ wage }); }} />
          <Field label={say('shop.field.overheadPct')} value={form.overhead} inputMode="decimal" error={errorOf('overheadPct')} onChange={(overhead) => { set({ overhead }); }} />
          {problem !== undefined && <ProblemNote problem={problem} />}
          <div className="row">
            <button type="submit" className="button button-main">{say('shell.save')}</button>
            <button type="button" className="button" onClick={() => { setForm(undefined); }}>{say('shell.cancel')}</button>
          </div>
        </form>
      ))}
    </section>
  );
}
