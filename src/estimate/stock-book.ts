import { sumMinor } from '#money';
import type { CardOf, ShopCard, StockBook, StockBookName, StockChoice, StockLine, StockTotal, TaxPeriod } from '#workshop';
import { stockLineOf } from './stock-line.ts';

/** What is asked of the stock book. Left out: every year, every line, totals by the quarter, the book that has anything in it. */
export interface StockRequest {
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
  const lines = every.filter((line) => isAsked(line, which, year));
  const isSoldThen = ({ regime, soldOn }: StockLine): boolean => regime === 'margin' && (year === null || soldOn === null || isIn(soldOn, year));
  const underScheme = lines.filter(isSoldThen);
  return {
    book, year, which, period, lines, totals: totalsOf(underScheme, period), leftOut: underScheme.filter((line) => !isCounted(line)).map(({ number }) => number),
    missingNumbers: missingIn(every.flatMap(({ number }) => number ?? [])),
    years: [...new Set(every.flatMap(({ boughtOn, soldOn }) => [boughtOn, soldOn]).flatMap((day) => (day === null ? [] : [Number(day.slice(0, 4))])))].sort((a, b) => a - b),
  };
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

const isIn = (day: string, year: number): boolean => Number(day.slice(0, 4)) === year;

/** `all` of a year: bought or sold in it; `sold`: sold in it; `open`: in stock when it ended. A day that is not known keeps a line in. */
function isAsked({ isSold, boughtOn, soldOn }: StockLine, which: StockChoice, year: number | null): boolean {
  if (year === null) return which === 'all' || isSold === (which === 'sold');
  const isSoldIn = isSold && (soldOn === null || isIn(soldOn, year));
  const last = `${String(year)}-12-31`;
  if (which === 'sold') return isSoldIn;
  if (which === 'open') return (boughtOn === null || boughtOn <= last) && (!isSold || (soldOn !== null && soldOn > last));
  return isSoldIn || boughtOn === null || isIn(boughtOn, year);
}

type Counted = StockLine & { readonly soldOn: string; readonly saleCurrency: string };

function isCounted(line: StockLine): line is Counted {
  return line.soldOn !== null && line.saleCurrency !== null && line.taxMinor !== null;
}

/** Name of the tax period a day lies in: `2031`, `2031-05`, `2031-Q2`. */
function periodOf(day: string, period: TaxPeriod): string {
  if (period === 'year') return day.slice(0, 4);
  return period === 'month' ? day.slice(0, 7) : `${day.slice(0, 4)}-Q${String(Math.ceil(Number(day.slice(5, 7)) / 3))}`;
}

function totalsOf(sold: readonly StockLine[], period: TaxPeriod): StockTotal[] {
  const counted = sold.filter(isCounted).map((line) => ({ line, group: `${periodOf(line.soldOn, period)} ${line.saleCurrency}` }));
  return [...new Set(counted.map(({ group }) => group))].sort().map((group) => {
    const lines = counted.flatMap((one) => (one.group === group ? [one.line] : []));
    const [name = '', currency = ''] = group.split(' ');
    const sum = (amountOf: (line: StockLine) => number | null): number => Number(sumMinor(lines.map((line) => amountOf(line) ?? 0)));
    return {
      period: name, currency, count: lines.length, purchaseMinor: sum(({ purchaseMinor }) => purchaseMinor), saleMinor: sum(({ saleMinor }) => saleMinor),
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
