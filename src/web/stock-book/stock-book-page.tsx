import { bookShown, stockBookOf, taxYearTold, taxYearWords } from '#estimate';
import { type StockBook, stockBookKinds, stockBooks, stockChoices, taxPeriods } from '#workshop';
import { Link, useNavigate, useSearch } from '@tanstack/react-router';
import { useMemo, useState } from 'react';
import { type Command, useCommands } from '../commands/registry.ts';
import { useLocale, useSay } from '../language/use-say.ts';
import { ProblemNote } from '../shell/problem-note.tsx';
import { undoInShop } from '../shop/shop-undo.ts';
import { type ShopBook, useShopBook } from '../shop/shop-queries.ts';
import { SelectField } from '../ui/select-field.tsx';
import { LineList } from './line-list.tsx';
import type { StockSearch } from './stock-search.ts';
import { TotalsTable } from './totals-table.tsx';
import { type Trade, TradeDialog } from './trade-dialog.tsx';
import '../shop/shop.css';
import './stock-book.css';

/** The stock book of the shop: every piano bought to be sold, totals by tax period, what is missing. */
export function StockBookPage() {
  const say = useSay();
  const { book, error, refetch } = useShopBook({ kinds: stockBookKinds });
  return (
    <section className="page stock-book">
      {error !== null && <><h1>{say('stockBook.title')}</h1><ProblemNote problem={error} onRetry={refetch} /></>}
      {error === null && book === undefined && <><h1>{say('stockBook.title')}</h1><p className="soft">{say('shell.loading')}</p></>}
      {error === null && book !== undefined && <Shown book={book} />}
    </section>
  );
}

function Shown({ book }: { readonly book: ShopBook }) {
  const say = useSay();
  const locale = useLocale();
  const search = useSearch({ from: '/stock-book' });
  const [trade, setTrade] = useState<Trade>();
  const stock = useMemo(() => stockBookOf(book.cards, search), [book.cards, search]);
  const files = useFiles(stock);
  const commands = useMemo((): readonly Command[] => [
    { id: 'stockBook.buy', label: 'command.stockBook.buy', group: 'command.group.shop', shortcut: 'n', perform: () => { setTrade({ kind: 'acquisition' }); } },
    { id: 'stockBook.csv', label: 'command.stockBook.csv', group: 'command.group.shop', perform: () => { location.assign(files.lines); } },
    { id: 'stockBook.pdf', label: 'command.stockBook.pdf', group: 'command.group.shop', perform: () => { open(files.pdf, '_blank', 'noopener'); } },
    { id: 'undo', label: 'command.undo.shop', group: 'command.group.shop', shortcut: 'mod+z', perform: () => { undoInShop(); } },
  ], [files]);
  useCommands(commands);
  return (
    <>
      <div className="row row-between">
        <h1>{say('stockBook.title')} {stock.book === 'demo' && <span className="demo-tag">{say('shell.demo')}</span>}</h1>
        <button type="button" className="button button-main no-print" onClick={() => { setTrade({ kind: 'acquisition' }); }}>{say('stockBook.buy')}</button>
      </div>
      <p>{say('stockBook.intro')} {say('stockBook.restoration')}</p>
      <p className="soft small">{say('stockBook.accountant')}</p>
      <Filter stock={stock} hasBoth={hasBoth(book)} />
      <section className="panel" aria-labelledby="stock-totals">
        <div className="row row-between">
          <h2 id="stock-totals">{say('stockBook.totals')}</h2>
          <span className="row no-print">
            <a className="button" href={files.totals} download>{say('stockBook.csv.totals')}</a>
            <a className="button" href={files.lines} download>{say('stockBook.csv')}</a>
            <a className="button" href={files.pdf} target="_blank" rel="noreferrer">{say('stockBook.pdf')}</a>
          </span>
        </div>
        <p className="soft">{taxYearTold(stock, say, locale)} {stock.book === 'shop' && <Link className="no-print" to="/settings" hash="settings-tax-year">{say('stockBook.taxYear.set')}</Link>}</p>
        <TotalsTable stock={stock} />
      </section>
      <section className="panel" aria-labelledby="stock-lines">
        <h2 id="stock-lines">{say('stockBook.lines')}</h2>
        {stock.lines.length === 0 && <p>{say(stock.years.length === 0 ? 'stockBook.empty' : 'stockBook.lines.none')}</p>}
        {stock.missingNumbers.length > 0 && <p className="soft">{say('stockBook.missingNumbers', { count: stock.missingNumbers.length, numbers: stock.missingNumbers.join(', ') })}</p>}
        <LineList stock={stock} book={book} heading="h3" leadsToPiano onWrite={setTrade} />
      </section>
      {trade !== undefined && <TradeDialog trade={trade} book={book} name={stock.book} onClose={() => { setTrade(undefined); }} />}
    </>
  );
}

const hasBoth = ({ cards }: ShopBook): boolean => bookShown(cards) === 'shop' && cards.some(({ kind, workshopId }) => kind === 'acquisition' && workshopId === 'demo');

/** Addresses of the files that hold what is shown. */
function useFiles({ book, year, which, period }: StockBook) {
  const locale = useLocale();
  return useMemo(() => {
    const query = new URLSearchParams({ book, which, period, locale, ...(year === null ? {} : { year: String(year) }) }).toString();
    return { lines: `/api/shop/stock-book.csv?${query}`, totals: `/api/shop/stock-book.csv?${query}&table=totals`, pdf: `/api/shop/stock-book.pdf?${query}` };
  }, [book, year, which, period, locale]);
}

/** Which lines are shown, what the totals are drawn up for, and whose book it is where there are two. */
function Filter({ stock, hasBoth: isAsked }: { readonly stock: StockBook; readonly hasBoth: boolean }) {
  const say = useSay();
  const locale = useLocale();
  const navigate = useNavigate();
  const set = (part: StockSearch): void => { void navigate({ to: '/stock-book', search: (now: StockSearch) => ({ ...now, ...part }), replace: true }); };
  const { year, which, period, book, years } = stock;
  const shown = year === null || years.includes(year) ? years : [...years, year];
  return (
    <div className="fields no-print">
      <SelectField label={say('stockBook.years')} value={year === null ? '' : String(year)} options={[{ value: '', label: say('stockBook.years.all') }, ...shown.toReversed().map((one) => ({ value: String(one), label: taxYearWords(one, stock, locale) }))]} onChange={(one) => { set({ year: one === '' ? undefined : Number(one) }); }} />
      <SelectField label={say('stockBook.which')} value={which} hint={say('stockBook.whichHint')} options={stockChoices.map((value) => ({ value, label: say(`stockBook.which.${value}`) }))} onChange={(one) => { set({ which: one }); }} />
      <SelectField label={say('stockBook.period')} value={period} options={taxPeriods.map((value) => ({ value, label: say(`stockBook.period.${value}`) }))} onChange={(one) => { set({ period: one }); }} />
      {isAsked && <SelectField label={say('stockBook.book')} value={book} options={stockBooks.map((value) => ({ value, label: say(`stockBook.book.${value}`) }))} onChange={(one) => { set({ book: one }); }} />}
    </div>
  );
}
