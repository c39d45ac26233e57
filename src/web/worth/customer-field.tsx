import { useState } from 'react';
import { usePiano } from '../api/piano.tsx';
import { useSay } from '../language/use-say.ts';
import CardDialog from '../shop/card-dialog.tsx';
import { useShopBook } from '../shop/shop-queries.ts';
import { Field } from '../ui/field.tsx';
import { SelectField } from '../ui/select-field.tsx';

interface CustomerFieldProps {
  readonly value: string;
  readonly error: string | undefined;
  readonly onChange: (customer: string) => void;
}

const TYPED = 'typed';

/** Whom a quote is for: one of the shop's people, or a reference of one's own, which can be made a person. Names stand outside the log. */
export function CustomerField({ value, error, onChange }: CustomerFieldProps) {
  const say = useSay();
  const { instrument } = usePiano();
  const { book } = useShopBook({ kinds: [] });
  const [isTyping, setTyping] = useState(false);
  const [isMaking, setMaking] = useState(false);
  const people = [...(book?.contacts.values() ?? [])].filter(({ workshopId, details, roles, id }) => id === value || (workshopId === instrument.workshopId && details !== null && roles.includes('customer')));
  const isTyped = isTyping || (value !== '' && book !== undefined && !people.some(({ id }) => id === value));
  return (
    <>
      <SelectField
        label={say('quote.field.person')} value={isTyped ? TYPED : value} error={isTyped ? undefined : error}
        options={[{ value: '', label: say('shop.field.person.none') }, ...people.map(({ id, details }) => ({ value: id, label: details?.name ?? say('shop.erased') })), { value: TYPED, label: say('quote.field.otherPerson') }]}
        onChange={(chosen) => { setTyping(chosen === TYPED); onChange(chosen === TYPED ? '' : chosen); }}
      />
      {isTyped && (
        <div>
          <Field label={say('quote.field.customer')} value={value} maxLength={64} error={error} onChange={onChange} />
          {value.trim() !== '' && !instrument.demo && <button type="button" className="button" onClick={() => { setMaking(true); }}>{say('quote.field.makePerson', { name: value })}</button>}
        </div>
      )}
      {isMaking && book !== undefined && <CardDialog kind="contact" book={book} known={{ 'details.name': value, roles: 'customer' }} onClose={() => { setMaking(false); }} onKept={({ id }) => { setTyping(false); onChange(id); }} />}
    </>
  );
}
