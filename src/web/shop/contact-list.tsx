import { contactRoles } from '#workshop';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { useSay } from '../language/use-say.ts';
import { Field } from '../ui/field.tsx';
import { SelectField } from '../ui/select-field.tsx';
import type { Contact, ShopBook } from './shop-queries.ts';

type RoleFilter = (typeof contactRoles)[number] | 'all';

/** Everybody who was not forgotten, by name; found by a few letters or by what they are to the shop. */
export function ContactList({ book, chosen }: { readonly book: ShopBook; readonly chosen: string | undefined }) {
  const say = useSay();
  const [text, setText] = useState('');
  const [role, setRole] = useState<RoleFilter>('all');
  const known = [...book.contacts.values()].filter(({ details }) => details !== null);
  const shown = known.filter((contact) => (role === 'all' || contact.roles.includes(role)) && hasText(contact, text)).sort((a, b) => (a.details?.name ?? '').localeCompare(b.details?.name ?? ''));
  if (known.length === 0) return <p>{say('people.page.empty')}</p>;
  return (
    <>
      <div className="fields">
        <Field label={say('people.page.search')} value={text} onChange={setText} maxLength={80} />
        <SelectField<RoleFilter>
          label={say('people.page.role')} value={role} onChange={setRole}
          options={[{ value: 'all', label: say('people.page.role.all') }, ...contactRoles.map((value) => ({ value, label: say(`shop.role.${value}`) }))]}
        />
      </div>
      {shown.length === 0 && <p className="soft" role="status">{say('people.page.none')}</p>}
      <ul className="contact-list">
        {shown.map(({ id, details, roles, workshopId }) => (
          <li key={id}>
            <Link to="/people" search={{ person: id }} aria-current={id === chosen ? 'true' : undefined}>
              <span className="contact-name">{details?.name}</span>
              <span className="soft small">
                {[details?.organisation ?? '', ...roles.map((one) => say(`shop.role.${one}`))].filter((part) => part !== '').join(' · ')}
                {workshopId === 'demo' && ` · ${say('shell.demo')}`}
              </span>
            </Link>
          </li>
        ))}
      </ul>
    </>
  );
}

function hasText({ details }: Contact, text: string): boolean {
  const wanted = text.trim().toLowerCase();
  return details !== null && [details.name, details.organisation, details.email, details.phone].some((part) => part.toLowerCase().includes(wanted));
}
