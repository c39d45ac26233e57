import { Link } from '@tanstack/react-router';
import { useMemo } from 'react';
import { useSay } from '../language/use-say.ts';
import { type Coming, comingOf } from './coming.ts';
import { headOfCard, nameOf } from './say-card.ts';
import type { ShopBook } from './shop-queries.ts';
import { useCardTelling } from './use-card-telling.ts';

/** What is coming or waits for an answer, earliest first. */
export function ComingList({ book }: { readonly book: ShopBook }) {
  const say = useSay();
  const coming = useMemo(() => comingOf(book.cards, new Date()), [book.cards]);
  return coming.length === 0 ? <p className="soft">{say('people.soon.none')}</p> : <ComingItems coming={coming} book={book} />;
}

/** Some things that are coming, each leading to the person it is of. */
export function ComingItems({ coming, book }: { readonly coming: readonly Coming[]; readonly book: ShopBook }) {
  const say = useSay();
  const telling = useCardTelling(book);
  const why = ({ card, on, why: reason }: Coming): string => {
    switch (reason) {
      case 'planned': return telling.moment(on);
      case 'past': return `${telling.moment(on)} · ${say('people.soon.past')}`;
      case 'due': return say('people.soon.due', { day: telling.day(on) });
      case 'out': return card.kind === 'loan' && card.until !== null ? say('people.soon.back', { day: telling.day(on) }) : say('people.soon.out', { day: telling.day(on) });
      case 'late': return say('people.soon.late', { day: telling.day(on) });
      case 'enquiry': return say('people.soon.enquiry', { day: telling.day(on) });
    }
  };
  return (
    <ul className="coming-list">
      {coming.map((one) => {
        const person = 'person' in one.card ? one.card.person : null;
        return (
          <li key={one.card.id} className={one.why === 'late' || one.why === 'past' ? 'coming coming-late' : 'coming'}>
            <span className="coming-when">{(one.why === 'late' || one.why === 'past') && <span aria-hidden="true">⚠ </span>}{why(one)}</span>
            <span>
              {person === null ? headOfCard(one.card, telling) : <Link to="/people" search={{ person }}>{[nameOf(person, book, say), headOfCard(one.card, telling)].join(' · ')}</Link>}
            </span>
          </li>
        );
      })}
    </ul>
  );
}
