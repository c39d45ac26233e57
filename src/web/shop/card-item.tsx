import type { ShopCard } from '#workshop';
import { useSay } from '../language/use-say.ts';
import { LoanCompare } from './loan-compare.tsx';
import { headOfCard, whenOfCard } from './say-card.ts';
import type { ShopBook } from './shop-queries.ts';
import { useCardTelling } from './use-card-telling.ts';

interface CardItemProps {
  readonly card: ShopCard;
  readonly book: ShopBook;
  readonly onCorrect: () => void;
  readonly onWithdraw: () => void;
}

/** One card of a person: what, when, in words; corrected or withdrawn here. */
export function CardItem({ card, book, onCorrect, onWithdraw }: CardItemProps) {
  const say = useSay();
  const telling = useCardTelling(book);
  const what = headOfCard(card, telling);
  const details = card.details as { readonly words?: string; readonly place?: string } | null;
  return (
    <li className="shop-card">
      <div>
        <p><strong>{what}</strong></p>
        <p className="soft small">{[whenOfCard(card, telling), details?.place ?? ''].filter((part) => part !== '').join(' · ')}</p>
        {details !== null && (details.words ?? '') !== '' && <p className="remark">{details.words}</p>}
        {card.kind === 'loan' && <LoanCompare loan={card} />}
      </div>
      <div className="row no-print">
        <button type="button" className="button" aria-label={say('people.page.edit', { what })} onClick={onCorrect}>{say('people.page.correct')}</button>
        <button type="button" className="button button-quiet" aria-label={say('people.page.withdrawOf', { what })} onClick={onWithdraw}>{say('people.page.withdraw')}</button>
      </div>
    </li>
  );
}
