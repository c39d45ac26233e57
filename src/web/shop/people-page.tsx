import { useNavigate, useSearch } from '@tanstack/react-router';
import { useMemo, useState } from 'react';
import { type Command, useCommands } from '../commands/registry.ts';
import { useLocale, useSay } from '../language/use-say.ts';
import { ProblemNote } from '../shell/problem-note.tsx';
import CardDialog from './card-dialog.tsx';
import { ComingList } from './coming-list.tsx';
import { ContactList } from './contact-list.tsx';
import { ContactSheet } from './contact-sheet.tsx';
import { undoInShop } from './shop-undo.ts';
import { comingAsked } from './coming.ts';
import { type ShopBook, useShopBook } from './shop-queries.ts';
import './shop.css';

/** Customers, suppliers and movers, what is coming, and all that is arranged with the one chosen. */
export function PeoplePage() {
  const say = useSay();
  const { book, error, refetch } = useShopBook(comingAsked);
  if (error !== null) return <section className="page"><h1>{say('shell.nav.people')}</h1><ProblemNote problem={error} onRetry={refetch} /></section>;
  if (book === undefined) return <section className="page"><h1>{say('shell.nav.people')}</h1><p className="soft">{say('shell.loading')}</p></section>;
  return <People book={book} />;
}

function People({ book }: { readonly book: ShopBook }) {
  const say = useSay();
  const locale = useLocale();
  const navigate = useNavigate();
  const { person } = useSearch({ from: '/people' });
  const [isAdding, setAdding] = useState(false);
  const chosen = person === undefined ? undefined : book.contacts.get(person);
  const commands = useMemo((): readonly Command[] => [
    { id: 'people.add', label: 'people.page.add', group: 'command.group.shop', shortcut: 'n', perform: () => { setAdding(true); } },
    { id: 'undo', label: 'command.undo.shop', group: 'command.group.shop', shortcut: 'mod+z', perform: () => { undoInShop(); } },
  ], []);
  useCommands(commands);
  const url = `${location.origin}/api/shop/calendar.ics?locale=${locale}`;
  return (
    <section className="page people" data-chosen={chosen === undefined ? undefined : true}>
      <div className="row row-between">
        <h1>{say('shell.nav.people')}</h1>
        <button type="button" className="button button-main" onClick={() => { setAdding(true); }}>{say('people.page.add')}</button>
      </div>
      <p className="soft people-intro">{say('people.page.intro')}</p>
      <div className="people-two">
        <div className="people-side">
          <section className="panel" aria-labelledby="people-list"><h2 id="people-list">{say('people.page.list')}</h2><ContactList book={book} chosen={chosen?.id} /></section>
        </div>
        <div className="people-main">
          {chosen === undefined ? (
            <>
              <section className="panel" aria-labelledby="people-soon"><h2 id="people-soon">{say('people.soon.title')}</h2><ComingList book={book} /></section>
              <section className="panel" aria-labelledby="people-calendar">
                <h2 id="people-calendar">{say('shop.calendar')}</h2>
                <p className="soft people-url">{say('shop.calendar.hint', { url })}</p>
                <p><a className="button" href={url} download="wrestplank.ics">{say('shop.calendar.file')}</a></p>
              </section>
              {book.contacts.size > 0 && <p className="soft">{say('people.page.choose')}</p>}
            </>
          ) : <ContactSheet key={chosen.id} contact={chosen} book={book} />}
        </div>
      </div>
      {isAdding && <CardDialog kind="contact" book={book} onClose={() => { setAdding(false); }} onKept={({ id }) => { void navigate({ to: '/people', search: { person: id } }); }} />}
    </section>
  );
}
