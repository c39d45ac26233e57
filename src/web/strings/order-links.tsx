import type { State } from '#instrument';
import { type OrderField, type OrderFieldName, type OrderTerms, checkOrderTerms, orderFieldNames, orderFields } from '#order';
import { type Issue, type Result, all, ok } from '#result';
import { parseMeasure, unitSign } from '#units';
import { usePiano } from '../api/piano.tsx';
import { useKept } from '../kept/kept.ts';
import { useFigures, useLocale, useSay } from '../language/use-say.ts';
import { errorAt } from '../terms/error-at.ts';
import { Field } from '../ui/field.tsx';

type Typed = Readonly<Partial<Record<OrderFieldName, string>>>;

/** The string order and the stringing chart of the state shown, with what may be stated of them. */
export function OrderLinks({ state }: { readonly state: State }) {
  const say = useSay();
  const locale = useLocale();
  const figure = useFigures();
  const { id, cycle } = usePiano();
  const [typed, setTyped] = useKept<Typed>(`wrestplank.order.${id}`, {});
  const terms = termsOf(typed, locale);
  const issues: readonly Issue[] = terms.ok ? [] : terms.issues;
  const errorOf = (name: OrderFieldName): string | undefined => errorAt(issues, name, say, locale);
  const hintOf = (name: OrderFieldName): string | undefined => {
    const { usual }: OrderField = orderFields[name];
    return usual === undefined || (typed[name] ?? '') !== '' ? undefined : say('order.usual', { value: figure(usual, 0) });
  };
  const address = (file: string, rest: Readonly<Record<string, string>> = {}): string => {
    const query = new URLSearchParams({ state, cycle: String(cycle), locale, ...rest });
    for (const [name, value] of Object.entries<number>(terms.ok ? terms.value : {})) query.set(name, String(value));
    return `/api/pianos/${encodeURIComponent(id)}/${file}?${query.toString()}`;
  };
  const paper = /-(?:US|CA|MX)$/u.test(locale) ? 'letter' : 'a4';
  return (
    <section className="panel" aria-labelledby="string-order">
      <h2 id="string-order">{say('order.links')}</h2>
      <p className="soft small">{say('order.links.about', { state: say(`state.${state}`) })}</p>
      <details>
        <summary>{say('order.links.state')}</summary>
        <div className="fields">
          {orderFieldNames.map((name) => (
            <Field
              key={name} label={labelOf(name, say(`order.field.${name}`))} inputMode="decimal" value={typed[name] ?? ''} hint={hintOf(name)}
              error={errorOf(name)}
              onChange={(text) => { setTyped({ ...typed, [name]: text }); }}
            />
          ))}
        </div>
      </details>
      {terms.ok && (
        <div className="row">
          <a className="button button-main" href={address('string-order.pdf', { paper })} target="_blank" rel="noreferrer">{say('order.links.order')}</a>
          <a className="button" href={address('stringing-chart.pdf', { paper })} target="_blank" rel="noreferrer">{say('order.links.chart')}</a>
          <a className="button" href={address('string-order.csv', { table: 'wound' })} download>{say('order.links.wound')}</a>
          <a className="button" href={address('string-order.csv', { table: 'wire' })} download>{say('order.links.wire')}</a>
          <a className="button" href={address('stringing-chart.csv')} download>{say('order.links.chartCsv')}</a>
        </div>
      )}
      {!terms.ok && <p className="field-error" role="alert">{issues.map(({ path }) => say(`order.field.${path}` as 'order.field.hitchMm')).join(', ')}</p>}
    </section>
  );
}

function labelOf(name: OrderFieldName, words: string): string {
  const sign = unitSign[orderFields[name].unit];
  return sign === '' ? words : `${words} (${sign})`;
}

function termsOf(typed: Typed, locale: string): Result<OrderTerms> {
  const stated = orderFieldNames.flatMap((name) => {
    const text = typed[name]?.trim() ?? '';
    if (text === '') return [];
    const parsed = parseMeasure(text, { unit: orderFields[name].unit, path: name, locale });
    return [parsed.ok ? ok([name, parsed.value.value] as const) : parsed];
  });
  const read = all<readonly [OrderFieldName, number]>(stated);
  return read.ok ? checkOrderTerms(Object.fromEntries(read.value)) : read;
}
