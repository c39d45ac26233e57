import { useSay } from '../language/use-say.ts';
import { Field } from '../ui/field.tsx';
import { freeId } from './line-draft.ts';
import { MoneyField } from './money-field.tsx';
import type { WayForm } from './terms-draft.ts';

interface WaysFieldsProps {
  readonly ways: readonly WayForm[];
  readonly currency: string;
  readonly errorOf: (path: string) => string | undefined;
  readonly onChange: (ways: readonly WayForm[]) => void;
}

const MOST_WAYS = 8;

/** The ways it could be done: what each is called, what it would sell for, and when it is paid. */
export function WaysFields({ ways, currency, errorOf, onChange }: WaysFieldsProps) {
  const say = useSay();
  const set = (index: number, part: Partial<WayForm>): void => { onChange(ways.map((way, at) => (at === index ? { ...way, ...part } : way))); };
  return (
    <>
      {ways.map((way, index) => {
        const path = `alternatives[${String(index)}]`;
        return (
          <fieldset key={way.id} className="worth-ways">
            <legend>{say('worth.alternative', { number: index + 1 })}</legend>
            <div className="fields">
              <Field label={say('worth.line.column.what')} value={way.words} maxLength={300} error={errorOf(`${path}.words`)} onChange={(words) => { set(index, { words }); }} />
              <MoneyField label={say('worth.alternative.sale', { currency })} value={way.saleMinor} currency={currency} hint={say('worth.alternative.saleHint')} error={errorOf(`${path}.saleMinor`)} onChange={(saleMinor) => { set(index, { saleMinor }); }} />
              <Field label={say('worth.alternative.months')} value={way.months} inputMode="numeric" error={errorOf(`${path}.months`)} onChange={(months) => { set(index, { months }); }} />
            </div>
            {ways.length > 1 && <div><button type="button" className="button button-quiet" onClick={() => { onChange(ways.filter((_, at) => at !== index)); }}>{say('worth.alternative.drop')} <span className="visually-hidden">{way.words}</span></button></div>}
          </fieldset>
        );
      })}
      {ways.length < MOST_WAYS && <div><button type="button" className="button" onClick={() => { onChange([...ways, { id: freeId('way', ways), words: '', saleMinor: '', months: '0' }]); }}>{say('worth.alternative.add')}</button></div>}
    </>
  );
}
