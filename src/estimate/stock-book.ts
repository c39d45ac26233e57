import { sumMinor } from '#money';
import type { CardOf, ShopCard, StockBook, StockBookName, StockChoice, StockLine, StockTotal, TaxPeriod } from '#workshop';
import { stockLineOf } from './stock-line.ts';
import { type DaySpan, taxPeriodOf, taxYearOf, taxYearOn } from './tax-period.ts';

/** What is asked of the stock book. Left out: every year, every line, totals by the quarter, the book that has anything in it. */
export interface StockRequest {
  /** The tax year that begins in this year of the calendar. */
  readonly year?: number | null | undefined;
  readonly which?: StockChoice | undefined;
  readonly period?: TaxPeriod | undefined;
  readonly book?: StockBookName | undefined;
}

type Acquisition = CardOf<'acquisition'>;
type Sale = CardOf<'sale'>;

/** Whether a card stands in a book. */
const isOf = ({ workshopId }: Pick<ShopCard, 'workshopId'>, book: StockBookName): boolean => (workshopId === 'demo') === (book === 'demo');

/** The book asked for; else the shop's own, but the demonstration's where that alone has any piano bought to be sold. */
export function bookShown(cards: readonly ShopCard[], asked?: StockBookName): StockBookName {
  const isIn = (name: StockBookName): boolean => cards.some((card) => card.kind === 'acquisition' && isOf(card, name));
  return asked ?? (!isIn('shop') && isIn('demo') ? 'demo' : 'shop');
}

/** The stock book: its lines in the order of their numbers, and what was sold under the margin scheme by tax period. @source VATMARG02300; EU-2006-112 art. 315 */
export function stockBookOf(cards: readonly ShopCard[], { year = null, which = 'all', period = 'quarter', book: asked }: StockRequest = {}): StockBook {
  const book = bookShown(cards, asked);
  const every = linesOf(cards.filter((card) => isOf(card, book)));
  const taxYearFrom = taxYearFromOf(cards, book);
  const fromMonth = taxYearFrom ?? 1;
  const span = year === null ? null : taxYearOf(year, fromMonth);
  const lines = every.filter((line) => isAsked(line, which, span));
  const isSoldThen = ({ regime, soldOn }: StockLine): boolean => regime === 'margin' && (span === null || soldOn === null || isIn(soldOn, span));
  const underScheme = lines.filter(isSoldThen);
  return {
    book, year, which, period, taxYearFrom, lines, totals: totalsOf(underScheme, period, fromMonth), leftOut: underScheme.filter((line) => !isCounted(line)).map(({ number }) => number),
    missingNumbers: missingIn(every.flatMap(({ number }) => number ?? [])),
    years: [...new Set(every.flatMap(({ boughtOn, soldOn }) => [boughtOn, soldOn]).flatMap((day) => (day === null ? [] : [taxYearOn(day, fromMonth)])))].sort((a, b) => a - b),
  };
}

/** The month the tax years of a book begin in, as stated last; null where nobody stated it. */
export function taxYearFromOf(cards: readonly ShopCard[], book: StockBookName): number | null {
  return cards.findLast((card): card is CardOf<'taxYear'> => card.kind === 'taxYear' && isOf(card, book))?.fromMonth ?? null;
}

/** The number the next purchase is offered: one more than the largest of the book. */
export function nextStockNumber(cards: readonly ShopCard[], book: StockBookName): number {
  return 1 + cards.reduce((most, card) => (card.kind === 'acquisition' && isOf(card, book) ? Math.max(most, card.number) : most), 0);
}

function linesOf(cards: readonly ShopCard[]): readonly StockLine[] {
  const bought = cards.filter((card): card is Acquisition => card.kind === 'acquisition').toSorted((a, b) => a.number - b.number);
  const sales = cards.filter((card): card is Sale => card.kind === 'sale');
  const ids = new Set(bought.map(({ id }) => id));
  return [
    ...bought.map((one) => stockLineOf(one, sales.find(({ acquisition }) => acquisition === one.id) ?? null, bought.some(({ id, number }) => number === one.number && id !== one.id))),
    ...sales.filter(({ id, acquisition }) => !ids.has(acquisition) || sales.find((sale) => sale.acquisition === acquisition)?.id !== id).map((sale) => stockLineOf(null, sale)),
  ];
}

const isIn = (day: string, { from, until }: DaySpan): boolean => day >= from && day <= until;

/** `all` of a tax year: bought or sold in it; `sold`: sold in it; `open`: in stock when it ended. A day that is not known keeps a line in. */
function isAsked({ isSold, boughtOn, soldOn }: StockLine, which: StockChoice, span: DaySpan | null): boolean {
  if (span === null) return which === 'all' || isSold === (which === 'sold');
  const isSoldIn = isSold && (soldOn === null || isIn(soldOn, span));
  const last = span.until;
  if (which === 'sold') return isSoldIn;
  if (which === 'open') return (boughtOn === null || boughtOn <= last) && (!isSold || (soldOn !== null && soldOn > last));
  return isSoldIn || boughtOn === null || isIn(boughtOn, span);
}

type Counted = StockLine & { readonly soldOn: string; readonly saleCurrency: string };

function isCounted(line: StockLine): line is Counted {
  return line.soldOn !== null && line.saleCurrency !== null && line.taxMinor !== null;
}

function totalsOf(sold: readonly StockLine[], period: TaxPeriod, fromMonth: number): StockTotal[] {
  const counted = sold.filter(isCounted).map((line) => ({ line, group: `${taxPeriodOf(line.soldOn, period, fromMonth).from} ${line.saleCurrency}` }));
  return [...new Set(counted.map(({ group }) => group))].sort().map((group) => {
    const lines = counted.flatMap((one) => (one.group === group ? [one.line] : []));
    const [from = '', currency = ''] = group.split(' ');
    const sum = (amountOf: (line: StockLine) => number | null): number => Number(sumMinor(lines.map((line) => amountOf(line) ?? 0)));
    return {
      ...taxPeriodOf(from, period, fromMonth), currency, count: lines.length, purchaseMinor: sum(({ purchaseMinor }) => purchaseMinor), saleMinor: sum(({ saleMinor }) => saleMinor),
      gainMinor: sum(({ marginMinor }) => Math.max(0, marginMinor ?? 0)), lossMinor: sum(({ lossMinor }) => lossMinor), taxMinor: sum(({ taxMinor }) => taxMinor),
    };
  });
}

/** At most so many missing numbers are named. */
const MOST_MISSING = 50;

function missingIn(numbers: readonly number[]): number[] {
  const sorted = [...new Set(numbers)].sort((a, b) => a - b);
  return [0, ...sorted].flatMap((number, index, all) => {
    const next = all[index + 1] ?? number + 1;
    return Array.from({ length: Math.min(MOST_MISSING, next - number - 1) }, (_, step) => number + 1 + step);
  }).slice(0, MOST_MISSING);
}
