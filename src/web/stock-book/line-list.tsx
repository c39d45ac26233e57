import { lineTitle } from '#estimate';
import type { CardOf, StockBook, StockLine } from '#workshop';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { useSay } from '../language/use-say.ts';
import { ProblemNote } from '../shell/problem-note.tsx';
import { type ShopBook, cardsOfKind } from '../shop/shop-queries.ts';
import { withdrawCard } from '../shop/shop-writing.ts';
import { toast } from '../toast/toasts.ts';
import { LineCard } from './line-card.tsx';
import type { Trade } from './trade-dialog.tsx';

interface LineListProps {
  readonly stock: StockBook;
  readonly book: ShopBook;
  readonly heading: 'h3' | 'h4';
  /** Leads to the piano each line is of. */
  readonly leadsToPiano?: boolean;
  readonly onWrite: (trade: Trade) => void;
}

/** Lines of the stock book, each with what can be written at it. */
export function LineList({ stock: { lines }, book, heading, leadsToPiano = false, onWrite }: LineListProps) {
  const say = useSay();
  const [problem, setProblem] = useState<unknown>();
  const withdraw = (id: string): void => {
    setProblem(undefined);
    withdrawCard(id).then(() => { toast(say('people.page.withdrawn')); }, setProblem);
  };
  return (
    <>
      {problem !== undefined && <ProblemNote problem={problem} />}
      {lines.map((line) => (
        <LineCard key={line.acquisitionId ?? line.saleId} line={line} heading={heading}>
          <LineDoings line={line} book={book} onWrite={onWrite} onWithdraw={withdraw} />
          {leadsToPiano && line.pianoId !== null && <Link className="button button-quiet" to="/pianos/$pianoId/worth" params={{ pianoId: line.pianoId }}>{say('stockBook.piano')}</Link>}
        </LineCard>
      ))}
    </>
  );
}

interface LineDoingsProps {
  readonly line: StockLine;
  readonly book: ShopBook;
  readonly onWrite: (trade: Trade) => void;
  readonly onWithdraw: (id: string) => void;
}

/** Notes the sale, corrects, withdraws: a purchase only while no sale stands on it. */
function LineDoings({ line, book: { cards }, onWrite, onWithdraw }: LineDoingsProps) {
  const say = useSay();
  const { acquisitionId, saleId } = line;
  const bought: CardOf<'acquisition'> | undefined = cardsOfKind(cards, 'acquisition').find(({ id }) => id === acquisitionId);
  const sold: CardOf<'sale'> | undefined = cardsOfKind(cards, 'sale').find(({ id }) => id === saleId);
  const what = lineTitle(line, say);
  return (
    <>
      {bought !== undefined && sold === undefined && <button type="button" className="button" aria-label={say('stockBook.sellOf', { what })} onClick={() => { onWrite({ kind: 'sale', of: bought }); }}>{say('stockBook.sell')}</button>}
      {bought !== undefined && <button type="button" className="button" aria-label={say('stockBook.correct.boughtOf', { what })} onClick={() => { onWrite({ kind: 'acquisition', card: bought }); }}>{say('stockBook.correct.bought')}</button>}
      {sold !== undefined && <button type="button" className="button" aria-label={say('stockBook.correct.soldOf', { what })} onClick={() => { onWrite({ kind: 'sale', card: sold }); }}>{say('stockBook.correct.sold')}</button>}
      {sold !== undefined && <button type="button" className="button button-quiet" aria-label={say('stockBook.withdraw.soldOf', { what })} onClick={() => { onWithdraw(sold.id); }}>{say('stockBook.withdraw.sold')}</button>}
      {bought !== undefined && sold === undefined && <button type="button" className="button button-quiet" aria-label={say('stockBook.withdraw.boughtOf', { what })} onClick={() => { onWithdraw(bought.id); }}>{say('stockBook.withdraw.bought')}</button>}
    </>
  );
}
