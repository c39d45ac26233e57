import type { ShopCard, ShopKind } from '#workshop';
import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { useSay } from '../language/use-say.ts';
import { ProblemNote } from '../shell/problem-note.tsx';
import { toast } from '../toast/toasts.ts';
import CardDialog from './card-dialog.tsx';
import { CardItem } from './card-item.tsx';
import { ContactFacts } from './contact-facts.tsx';
import { type Contact, type ShopBook, cardsOfKind, shopQuery } from './shop-queries.ts';
import { withdrawCard } from './shop-writing.ts';

/** What can be arranged with a person, in the order it is looked for. */
const sections = ['appointment', 'ownership', 'enquiry', 'loan', 'reminder'] as const satisfies readonly ShopKind[];
const NO_CARDS: readonly ShopCard[] = [];

interface Open {
  readonly kind: ShopKind;
  readonly card?: ShopCard;
}

/** One person with all that is arranged with them. */
export function ContactSheet({ contact, book }: { readonly contact: Contact; readonly book: ShopBook }) {
  const say = useSay();
  const [open, setOpen] = useState<Open>();
  const [problem, setProblem] = useState<unknown>();
  const withdraw = (card: ShopCard): void => {
    setProblem(undefined);
    withdrawCard(card.id).then(() => { toast(say('people.page.withdrawn')); }, setProblem);
  };
  const arranged = useQuery(shopQuery({ kinds: sections, person: contact.id }));
  const cards = arranged.data ?? NO_CARDS;
  const known = { person: contact.id, ...knownPiano(cards) };
  return (
    <div className="contact-sheet">
      <p className="people-back"><Link to="/people" search={{}} className="button">{say('people.page.back')}</Link></p>
      <ContactFacts contact={contact} onCorrect={() => { setOpen({ kind: 'contact', card: contact }); }} />
      {problem !== undefined && <ProblemNote problem={problem} />}
      {arranged.error !== null && <ProblemNote problem={arranged.error} onRetry={() => void arranged.refetch()} />}
      {arranged.data === undefined && arranged.error === null && <p className="soft">{say('shell.loading')}</p>}
      {arranged.data !== undefined && sections.map((kind) => {
        const own = cardsOfKind(cards, kind);
        const id = `people-${kind}`;
        return (
          <section key={kind} className="panel" aria-labelledby={id}>
            <div className="row row-between">
              <h3 id={id}>{say(`people.page.section.${kind}`)}</h3>
              <button type="button" className="button" onClick={() => { setOpen({ kind }); }}>{say(`people.page.add.${kind}`)}</button>
            </div>
            {own.length === 0 && <p className="soft">{say(`people.page.nothing.${kind}`)}</p>}
            <ul className="shop-cards">
              {own.map((card) => <CardItem key={card.id} card={card} book={book} onCorrect={() => { setOpen({ kind, card }); }} onWithdraw={() => { withdraw(card); }} />)}
            </ul>
          </section>
        );
      })}
      {open !== undefined && <CardDialog key={open.card?.id ?? open.kind} kind={open.kind} book={book} card={open.card} known={known} onClose={() => { setOpen(undefined); }} />}
    </div>
  );
}

/** The piano a new card is most likely of: the one the person owns now, where there is just one. */
function knownPiano(cards: readonly ShopCard[]): { readonly pianoId?: string } {
  const owned = cardsOfKind(cards, 'ownership').filter(({ relation, until, pianoId }) => relation === 'owns' && until === null && pianoId !== null);
  const [only] = owned;
  return owned.length === 1 && only?.pianoId !== undefined && only.pianoId !== null ? { pianoId: only.pianoId } : {};
}
