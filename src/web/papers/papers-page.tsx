import { historyOf, materialsOf, ruleBookOf } from '#workshop';
import { useMemo } from 'react';
import { SheetLinks } from '../action/regulation/sheet-links.tsx';
import { usePiano } from '../api/piano.tsx';
import { useSay } from '../language/use-say.ts';
import { ProblemNote } from '../shell/problem-note.tsx';
import { type ShopBook, useShopBook } from '../shop/shop-queries.ts';
import { dayHere } from '../ui/day-here.ts';
import { Note } from '../ui/note.tsx';
import { HistoryPanel } from './history-panel.tsx';
import { MaterialsPanel } from './materials-panel.tsx';
import { RulesPanel } from './rules-panel.tsx';
import { ShipmentsPanel } from './shipments-panel.tsx';
import '../leaves/leaves.css';
import './papers.css';

/** Which papers the materials of the instrument ask for before it is sold, sent or worked on. */
export function PapersPage() {
  const say = useSay();
  const { id } = usePiano();
  const { book, error, refetch } = useShopBook({ kinds: ['shipment', 'ruleFile', 'ownRule'], pianoId: id });
  return (
    <div className="page papers">
      <Note tone="warn" role="note"><p>{say('papers.caution')}</p></Note>
      {error !== null && <ProblemNote problem={error} onRetry={refetch} />}
      {book !== undefined && <Papers book={book} />}
    </div>
  );
}

function Papers({ book }: { readonly book: ShopBook }) {
  const { papers } = usePiano();
  const rules = useMemo(() => ruleBookOf(book.cards), [book.cards]);
  const materials = materialsOf(papers);
  const hasAny = papers.length > 0 || book.cards.some((card) => card.kind === 'shipment');
  return (
    <>
      <MaterialsPanel materials={materials} />
      <HistoryPanel history={historyOf(papers)} />
      <ShipmentsPanel book={book} records={papers} rules={rules} />
      {hasAny && <SheetLinks sheet="papers" state="found" />}
      <RulesPanel cards={book.cards} rules={rules} today={dayHere()} />
    </>
  );
}
