import { stockBookOf } from '#estimate';
import { currencyOf, formatMoney } from '#money';
import { type Estimate, type StockBook, type StockLine, tradeKinds } from '#workshop';
import { Link } from '@tanstack/react-router';
import { useMemo, useState } from 'react';
import { usePiano } from '../api/piano.tsx';
import { useLocale, useSay } from '../language/use-say.ts';
import { useShopBook } from '../shop/shop-queries.ts';
import { LineList } from '../stock-book/line-list.tsx';
import '../stock-book/stock-book.css';
import '../shop/shop.css';
import { type Trade, TradeDialog } from '../stock-book/trade-dialog.tsx';

/** Where the shop bought this piano to sell it again, and where it sold it: its lines of the stock book. */
export function TradePanel() {
  const say = useSay();
  const { id, instrument, estimate } = usePiano();
  const { book } = useShopBook({ kinds: tradeKinds });
  const [trade, setTrade] = useState<Trade>();
  const name = instrument.demo ? 'demo' : 'shop';
  const stock = useMemo(() => (book === undefined ? undefined : linesAt(stockBookOf(book.cards, { book: name }), id)), [book, name, id]);
  if (book === undefined || stock === undefined) return null;
  const { lines } = stock;
  return (
    <section className="panel" aria-labelledby="worth-trade">
      <div className="row row-between">
        <h2 id="worth-trade">{say('stockBook.here')}</h2>
        <span className="row no-print">
          <Link className="button" to="/stock-book" search={{ book: name }}>{say('stockBook.open')}</Link>
          {lines.every(({ isSold }) => isSold) && <button type="button" className="button" onClick={() => { setTrade({ kind: 'acquisition' }); }}>{say('stockBook.buy')}</button>}
        </span>
      </div>
      {lines.length === 0 ? <p>{say('stockBook.here.none')}</p> : <p className="soft small">{say('stockBook.restoration')} {say('stockBook.papers')}</p>}
      <Differing estimate={estimate} line={lines.at(-1)} />
      <LineList stock={stock} book={book} heading="h3" onWrite={setTrade} />
      {trade !== undefined && <TradeDialog trade={trade} book={book} name={name} at={{ instrument, estimate }} onClose={() => { setTrade(undefined); }} />}
    </section>
  );
}

const linesAt = (stock: StockBook, pianoId: string): StockBook => ({ ...stock, lines: stock.lines.filter((line) => line.pianoId === pianoId) });

/** Says where the estimate reckons with another purchase price than the stock book. */
function Differing({ estimate, line }: { readonly estimate: Estimate | null; readonly line: StockLine | undefined }) {
  const say = useSay();
  const locale = useLocale();
  const [reckoned, booked] = [currencyOf(estimate?.currency ?? ''), currencyOf(line?.purchaseCurrency ?? '')];
  if (estimate?.owner !== 'shop' || estimate.purchaseMinor === null || line?.purchaseMinor == null || reckoned === undefined || booked === undefined) return null;
  if (estimate.purchaseMinor === line.purchaseMinor && reckoned === booked) return null;
  return <p className="field-error">{say('stockBook.here.differs', { estimate: formatMoney({ minor: estimate.purchaseMinor, currency: reckoned }, locale), book: formatMoney({ minor: line.purchaseMinor, currency: booked }, locale) })}</p>;
}
