import type { ShopCard, ShopKind } from '#workshop';
import { Link } from '@tanstack/react-router';
import { useMemo, useState } from 'react';
import { type Command, useCommands } from '../commands/registry.ts';
import { useSay } from '../language/use-say.ts';
import { ProblemNote } from '../shell/problem-note.tsx';
import CardDialog from '../shop/card-dialog.tsx';
import { type ShopBook, useShopBook } from '../shop/shop-queries.ts';
import { undoInShop } from '../shop/shop-undo.ts';
import { PurchaseList } from './purchase-list.tsx';
import { StockTable } from './stock-table.tsx';
import '../shop/shop.css';
import './parts.css';

/** What is in stock, what is on order, and whether what came is what was ordered. */
export function PartsPage() {
  const say = useSay();
  const { book, error, refetch } = useShopBook({ kinds: ['stock', 'stockMove', 'purchase', 'receipt'] });
  if (error !== null) return <section className="page"><h1>{say('shell.nav.parts')}</h1><ProblemNote problem={error} onRetry={refetch} /></section>;
  if (book === undefined) return <section className="page"><h1>{say('shell.nav.parts')}</h1><p className="soft">{say('shell.loading')}</p></section>;
  return <Parts book={book} />;
}

function Parts({ book }: { readonly book: ShopBook }) {
  const say = useSay();
  const [open, setOpen] = useState<{ readonly kind: ShopKind; readonly card?: ShopCard }>();
  const commands = useMemo((): readonly Command[] => [
    { id: 'parts.add', label: 'parts.stock.add', group: 'command.group.shop', shortcut: 'n', perform: () => { setOpen({ kind: 'stock' }); } },
    { id: 'undo', label: 'command.undo.shop', group: 'command.group.shop', shortcut: 'mod+z', perform: () => { undoInShop(); } },
  ], []);
  useCommands(commands);
  return (
    <section className="page parts">
      <div className="row row-between">
        <h1>{say('shell.nav.parts')}</h1>
        <span className="row no-print">
          <Link className="button" to="/stock-book">{say('stockBook.short')}</Link>
          <button type="button" className="button button-main" onClick={() => { setOpen({ kind: 'stock' }); }}>{say('parts.stock.add')}</button>
        </span>
      </div>
      <section className="panel" aria-labelledby="parts-stock">
        <h2 id="parts-stock">{say('parts.stock')}</h2>
        <StockTable book={book} onCorrect={(card) => { setOpen({ kind: 'stock', card }); }} />
      </section>
      <PurchaseList book={book} />
      {open !== undefined && <CardDialog key={open.card?.id ?? 'new'} kind={open.kind} book={book} card={open.card} onClose={() => { setOpen(undefined); }} />}
    </section>
  );
}
