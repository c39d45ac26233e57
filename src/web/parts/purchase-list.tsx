import { currencyOf, formatMoney } from '#money';
import type { CardOf } from '#workshop';
import { useState } from 'react';
import { useFigures, useLocale, useSay } from '../language/use-say.ts';
import { ProblemNote } from '../shell/problem-note.tsx';
import { toast } from '../toast/toasts.ts';
import { nameOf } from '../shop/say-card.ts';
import { type ShopBook, cardsOfKind } from '../shop/shop-queries.ts';
import { changeCard, receivePurchase } from '../shop/shop-writing.ts';
import { useCardTelling } from '../shop/use-card-telling.ts';
import { decimalsFor } from '../story/say-event.ts';
import { dayHere } from '../ui/day-here.ts';
import { PurchaseDialog } from './purchase-dialog.tsx';
import { ReceiptCheck } from './receipt-check.tsx';

type Purchase = CardOf<'purchase'>;

/** What is ordered, with its lines; received, it goes into stock, and wound strings can be measured against the order. */
export function PurchaseList({ book }: { readonly book: ShopBook }) {
  const say = useSay();
  const figure = useFigures();
  const locale = useLocale();
  const telling = useCardTelling(book);
  const [open, setOpen] = useState<Purchase | 'new'>();
  const [problem, setProblem] = useState<unknown>();
  const purchases = cardsOfKind(book.cards, 'purchase').toReversed();
  const act = (work: () => Promise<unknown>, done: string): void => {
    setProblem(undefined);
    work().then(() => { toast(done); }, setProblem);
  };
  const priceOf = (minor: number, code: string | null): string => { const currency = currencyOf(code ?? ''); return currency === undefined ? '' : formatMoney({ minor, currency }, locale); };
  const receive = async ({ id }: Purchase): Promise<unknown> => await receivePurchase(id, dayHere());
  return (
    <section className="panel" aria-labelledby="parts-orders">
      <div className="row row-between">
        <h2 id="parts-orders">{say('parts.orders')}</h2>
        <button type="button" className="button" onClick={() => { setOpen('new'); }}>{say('parts.order.add')}</button>
      </div>
      {problem !== undefined && <ProblemNote problem={problem} />}
      {purchases.length === 0 && <p className="soft">{say('parts.orders.none')}</p>}
      <ul className="shop-cards">
        {purchases.map((purchase) => {
          const { id, person, pianoId, status, lines, orderedOn, expectedOn, receivedOn } = purchase;
          const priced = lines.filter(({ priceMinor }) => priceMinor !== null);
          const days = [orderedOn === null ? '' : say('parts.order.on', { day: telling.day(orderedOn) }), expectedOn === null || receivedOn !== null ? '' : say('parts.order.expected', { day: telling.day(expectedOn) }), receivedOn === null ? '' : say('parts.order.received', { day: telling.day(receivedOn) })];
          const name = [nameOf(person, book, say) ?? say('shop.field.person.none'), pianoId === null ? '' : (book.pianos.get(pianoId) ?? '')].filter((part) => part !== '').join(' · ');
          return (
            <li key={id} className="shop-card">
              <div>
                <p><strong>{name}</strong> <span className="soft">{say(`parts.status.${status}`)}</span></p>
                <p className="soft small">{days.filter((day) => day !== '').join(' · ')}</p>
                <details>
                  <summary>{say('parts.order.lines', { count: lines.length })}{priced.length === 0 ? '' : ` · ${say('parts.order.sum', { sum: priceOf(priced.reduce((sum, { priceMinor }) => sum + (priceMinor ?? 0), 0), purchase.currency), priced: priced.length, count: lines.length })}`}</summary>
                  <ul className="purchase-lines">
                    {lines.map((line, index) => <li key={index}>{line.name}{line.sizeMm === null ? '' : ` ${figure(line.sizeMm, decimalsFor(line.sizeMm, 3), 'mm')}`}: {say('parts.amount', { amount: figure(line.amount, decimalsFor(line.amount, 3)), unit: line.unit })}{line.priceMinor === null ? '' : ` · ${priceOf(line.priceMinor, purchase.currency)}`}</li>)}
                  </ul>
                </details>
                {status === 'received' && pianoId !== null && <ReceiptCheck purchase={purchase} pianoId={pianoId} book={book} />}
              </div>
              <div className="row no-print">
                {status === 'draft' && <button type="button" className="button" onClick={() => { act(() => changeCard(id, { kind: 'purchase', status: 'ordered', orderedOn: dayHere() }), say('parts.order.nowOrdered')); }}>{say('parts.order.send')}</button>}
                {status === 'ordered' && <button type="button" className="button" onClick={() => { act(() => receive(purchase), say('parts.order.nowReceived')); }}>{say('parts.order.receive')}</button>}
                <button type="button" className="button" aria-label={say('people.page.edit', { what: name })} onClick={() => { setOpen(purchase); }}>{say('people.page.correct')}</button>
              </div>
            </li>
          );
        })}
      </ul>
      {open !== undefined && <PurchaseDialog key={open === 'new' ? 'new' : open.id} purchase={open === 'new' ? undefined : open} book={book} onClose={() => { setOpen(undefined); }} />}
    </section>
  );
}
