import { useSay } from '../language/use-say.ts';
import { sayMaybe } from '../language/say-maybe.ts';
import { CheckGroup } from '../ui/check-group.tsx';
import { DayField } from '../ui/day-field.tsx';
import { Field } from '../ui/field.tsx';
import { SelectField } from '../ui/select-field.tsx';
import { MoneyField } from '../worth/money-field.tsx';
import type { CardField } from './card-fields.ts';
import { usePlaceOptions } from './place-names.ts';
import type { ShopBook } from './shop-queries.ts';

interface FieldControlProps {
  readonly field: CardField;
  readonly value: string;
  readonly error: string | undefined;
  readonly book: ShopBook;
  /** What is typed as the currency of the card, for an amount. */
  readonly currency?: string;
  readonly onChange: (value: string) => void;
}

/** One field of a card, as it is typed. */
export function FieldControl({ field, value, error, book, currency = '', onChange }: FieldControlProps) {
  const say = useSay();
  const { path, as, area = 'shop.field', isOptional = false, choices = [], words = '', maxLength } = field;
  const placeOptions = usePlaceOptions(as === 'place');
  const label = sayMaybe(say, `${area}.${path}`);
  const hintKey = `${area.replace('.field', '.hint')}.${path}`;
  const hint = hintKey !== `${area}.${path}` && say.knows(hintKey) ? say(hintKey) : undefined;
  const shared = { label, value, onChange, error } as const;
  const limit = maxLength === undefined ? {} : { maxLength };
  switch (as) {
    case 'line': return <Field {...shared} {...limit} hint={hint} required={!isOptional} />;
    case 'lines': return <Field {...shared} {...limit} lines={3} />;
    case 'roughDay': return <Field {...shared} hint={hint} maxLength={10} />;
    case 'number':
    case 'measure': return <Field {...shared} hint={hint} inputMode="decimal" maxLength={40} required={!isOptional} />;
    case 'whole': return <Field {...shared} hint={hint} inputMode="numeric" maxLength={6} required={!isOptional} />;
    case 'day': return <DayField {...shared} hint={hint ?? say(isOptional ? 'shop.hint.day' : 'shop.hint.dayNeeded')} />;
    case 'moment': return <DayField {...shared} hasClock hint={hint ?? ''} />;
    case 'choice': return <SelectField label={label} value={value} options={choices.map((one) => ({ value: one, label: sayMaybe(say, one === '' ? `${area}.${path}.none` : `${words}.${one}`) }))} onChange={onChange} error={error} />;
    case 'truth': return <SelectField label={label} value={value} options={[...(isOptional ? [''] : []), 'yes', 'no'].map((one) => ({ value: one, label: say(`papers.truth.${one === '' ? 'none' : one as 'yes' | 'no'}`) }))} onChange={onChange} error={error} />;
    case 'place': return <SelectField label={label} value={value} options={placeOptions} onChange={onChange} error={error} />;
    case 'roles': return <CheckGroup label={label} error={error} chosen={value.split(' ')} options={choices.map((one) => ({ value: one, label: sayMaybe(say, `${words}.${one}`) }))} onChange={(chosen) => { onChange(chosen.join(' ')); }} />;
    case 'person':
    case 'piano': {
      const known = as === 'piano' ? [...book.pianos].map(([id, name]) => ({ value: id, label: name })) : [...book.contacts.values()].map(({ id, details }) => ({ value: id, label: details?.name ?? say('shop.erased') }));
      return <SelectField label={label} value={value} options={[{ value: '', label: say(as === 'piano' ? 'shop.field.pianoId.none' : 'shop.field.person.none') }, ...known]} onChange={onChange} error={error} />;
    }
    case 'money': return <MoneyField {...shared} hint={hint} currency={currency.trim().toUpperCase()} />;
    case 'currency': return <Field {...shared} hint={hint} maxLength={3} required={!isOptional} />;
    case 'given':
    case 'condition': return null;
  }
}
