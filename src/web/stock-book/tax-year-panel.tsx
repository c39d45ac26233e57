import { monthName, taxYearFromOf, taxYearTold } from '#estimate';
import { useQuery } from '@tanstack/react-query';
import { type SyntheticEvent, useState } from 'react';
import { useLocale, useSay } from '../language/use-say.ts';
import { ProblemNote } from '../shell/problem-note.tsx';
import { shopQuery } from '../shop/shop-queries.ts';
import { addCard } from '../shop/shop-writing.ts';
import { SelectField } from '../ui/select-field.tsx';
import '../shop/shop.css';

const MONTHS = Array.from({ length: 12 }, (_, index) => index + 1);

/** Where the tax year of the shop begins, by which the stock book draws up its quarters and years. */
export default function TaxYearPanel() {
  const say = useSay();
  const locale = useLocale();
  const { data } = useQuery(shopQuery({ kinds: ['taxYear'] }));
  const [month, setMonth] = useState<number>();
  const [problem, setProblem] = useState<unknown>();
  const taxYearFrom = taxYearFromOf(data ?? [], 'shop');
  const submit = (event: SyntheticEvent): void => {
    event.preventDefault();
    if (month === undefined) return;
    setProblem(undefined);
    addCard({ kind: 'taxYear', fromMonth: month }).then(() => { setMonth(undefined); }, setProblem);
  };
  const endsOf = (from: number): string => [2, 5, 8, 11].map((later) => monthName(((from - 1 + later) % 12) + 1, locale)).join(', ');
  return (
    <section className="panel" aria-labelledby="settings-tax-year">
      <h2 id="settings-tax-year">{say('stockBook.taxYear')}</h2>
      <p className="soft">{say('stockBook.taxYear.hint')}</p>
      {data !== undefined && (month === undefined ? (
        <>
          <p>{taxYearTold({ taxYearFrom }, say, locale)}</p>
          <div><button type="button" className="button" onClick={() => { setMonth(taxYearFrom ?? 1); }}>{say('stockBook.taxYear.set')}</button></div>
        </>
      ) : (
        <form className="card-form" onSubmit={submit}>
          <SelectField label={say('stockBook.taxYear.field')} value={String(month)} hint={say('stockBook.taxYear.ends', { ends: endsOf(month) })} options={MONTHS.map((one) => ({ value: String(one), label: monthName(one, locale) }))} onChange={(one) => { setMonth(Number(one)); }} />
          {problem !== undefined && <ProblemNote problem={problem} />}
          <div className="row">
            <button type="submit" className="button button-main">{say('shell.save')}</button>
            <button type="button" className="button" onClick={() => { setMonth(undefined); }}>{say('shell.cancel')}</button>
          </div>
        </form>
      ))}
    </section>
  );
}
