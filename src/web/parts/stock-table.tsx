import { type CardOf, type StockLevel, stockLevels } from '#workshop';
import { useMemo, useState } from 'react';
import { useFigures, useSay } from '../language/use-say.ts';
import { nameOf } from '../shop/say-card.ts';
import type { ShopBook } from '../shop/shop-queries.ts';
import { decimalsFor } from '../story/say-event.ts';
import { ScrollTable } from '../ui/scroll-table.tsx';
import { type MoveKind, MoveDialog } from './move-dialog.tsx';
import { MovesDialog } from './moves-dialog.tsx';
import '../leaves/leaves.css';

/** Everything in stock with how much there is; what is to be ordered again stands first and says so. */
export function StockTable({ book, onCorrect }: { readonly book: ShopBook; readonly onCorrect: (card: CardOf<'stock'>) => void }) {
  const say = useSay();
  const figure = useFigures();
  const [moving, setMoving] = useState<{ readonly level: StockLevel; readonly how: MoveKind | 'told' }>();
  const levels = useMemo(() => [...stockLevels(book.cards)].sort((a, b) => Number(b.isLow) - Number(a.isLow) || a.stock.what.localeCompare(b.stock.what) || (a.stock.sizeMm ?? 0) - (b.stock.sizeMm ?? 0) || a.stock.name.localeCompare(b.stock.name)), [book.cards]);
  if (levels.length === 0) return <p>{say('parts.stock.empty')}</p>;
  const amount = (value: number, { unit }: CardOf<'stock'>): string => say('parts.amount', { amount: figure(value, decimalsFor(value, 3)), unit });
  return (
    <>
      <ScrollTable
        label={say('parts.stock.table')} corner={say('parts.stock.what')}
        columns={[{ key: 'size', head: say('shop.field.sizeMm') }, { key: 'level', head: say('parts.stock.level') }, { key: 'reorder', head: say('shop.field.reorderAt') }, { key: 'order', head: say('parts.stock.onOrder') }, { key: 'do', head: <span className="visually-hidden">{say('parts.stock.do')}</span> }]}
      >
        {levels.map((level) => {
          const { stock, isLow, onOrder } = level;
          const supplier = nameOf(stock.person, book, say);
          const move = (how: MoveKind) => <button type="button" className="button" aria-label={`${say(`parts.move.${how}`)}: ${stock.name}`} onClick={() => { setMoving({ level, how }); }}>{say(`parts.move.${how}`)}</button>;
          return (
            <tr key={stock.id}>
              <th scope="row">
                {stock.name} <span className="soft small">{say(`shop.stockKind.${stock.what}`)}{supplier === undefined ? '' : ` · ${supplier}`}{stock.workshopId === 'demo' ? ` · ${say('shell.demo')}` : ''}</span>
              </th>
              <td>{stock.sizeMm === null ? '–' : figure(stock.sizeMm, decimalsFor(stock.sizeMm, 3), 'mm')}</td>
              <td><button type="button" className="figure" title={say('shell.figure.open')} aria-label={say('parts.moves.title', { name: stock.name, amount: amount(level.level, stock) })} onClick={() => { setMoving({ level, how: 'told' }); }}><strong>{amount(level.level, stock)}</strong></button>{isLow && <span className="stock-low"><span aria-hidden="true"> ⚠ </span>{say('parts.stock.low')}</span>}</td>
              <td>{stock.reorderAt === null ? say('story.notStated') : amount(stock.reorderAt, stock)}</td>
              <td>{onOrder === 0 ? '–' : amount(onOrder, stock)}</td>
              <td><span className="row stock-do">{move('take')}{move('put')}{move('count')}<button type="button" className="button button-quiet" aria-label={say('people.page.edit', { what: stock.name })} onClick={() => { onCorrect(stock); }}>{say('people.page.correct')}</button></span></td>
            </tr>
          );
        })}
      </ScrollTable>
      {moving?.how === 'told' && <MovesDialog level={moving.level} book={book} onClose={() => { setMoving(undefined); }} />}
      {moving !== undefined && moving.how !== 'told' && <MoveDialog key={`${moving.level.stock.id} ${moving.how}`} level={moving.level} how={moving.how} book={book} onClose={() => { setMoving(undefined); }} />}
    </>
  );
}
