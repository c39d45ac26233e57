import { nextStockNumber } from '#estimate';
import type { Instrument } from '#instrument';
import type { CardOf, Estimate, StockBookName } from '#workshop';
import { useLocale } from '../language/use-say.ts';
import CardDialog from '../shop/card-dialog.tsx';
import { type ShopBook, cardsOfKind } from '../shop/shop-queries.ts';
import { dayHere } from '../ui/day-here.ts';
import { shownMoney } from '../worth/typed-money.ts';

/** What is written: a purchase or a sale, new or corrected. */
export type Trade =
  | { readonly kind: 'acquisition'; readonly card?: CardOf<'acquisition'> }
  | { readonly kind: 'sale'; readonly card: CardOf<'sale'> }
  | { readonly kind: 'sale'; readonly of: CardOf<'acquisition'> };

interface TradeDialogProps {
  readonly trade: Trade;
  readonly book: ShopBook;
  readonly name: StockBookName;
  /** The piano it is written at, and its estimate, from which a new purchase takes over what is stated there. */
  readonly at?: { readonly instrument: Pick<Instrument, 'id' | 'maker' | 'serial' | 'year'>; readonly estimate: Estimate | null };
  readonly onClose: () => void;
}

type Known = Readonly<Record<string, string>>;

/** The purchase or the sale of a piano bought to be sold again; what is known already stands in it, and nothing more. */
export function TradeDialog({ trade, book, name, at, onClose }: TradeDialogProps) {
  const locale = useLocale();
  const card = 'card' in trade ? trade.card : undefined;
  const known = 'of' in trade ? knownOfSale(trade.of, book) : card === undefined ? knownOfPurchase(book, name, at, locale) : {};
  return <CardDialog kind={trade.kind} book={book} card={card} known={known} follow={(path, fields) => partyOf(path, fields, book)} onClose={onClose} />;
}

/** The name and address of a person who was just chosen, where none are typed yet. */
function partyOf(path: string, fields: Known, { contacts }: ShopBook): Known {
  const chosen = path === 'person' ? contacts.get(fields['person'] ?? '')?.details : undefined;
  if (chosen == null || (fields['details.name'] ?? '').trim() !== '' || (fields['details.address'] ?? '').trim() !== '') return {};
  return { 'details.name': chosen.name, 'details.address': chosen.address };
}

function knownOfPurchase(book: ShopBook, name: StockBookName, at: TradeDialogProps['at'], locale: string): Known {
  const number = { number: String(nextStockNumber(book.cards, name)) };
  if (at === undefined) return number;
  const { instrument: { id, maker, serial, year }, estimate } = at;
  const bought: Known = estimate?.owner === 'shop' && estimate.purchaseMinor !== null ? { currency: estimate.currency, priceMinor: shownMoney(estimate.purchaseMinor, estimate.currency, locale), on: estimate.purchasedOn ?? '' } : {};
  return { ...number, pianoId: id, description: [maker, serial, year === null ? null : String(year)].filter((part) => part !== null && part !== '').join(', '), ...bought };
}

/** A sale is today's, in the currency of its purchase, under the margin scheme unless the purchase was not; place and rounding are those of the sale noted last. */
function knownOfSale({ id, currency, eligible, workshopId }: CardOf<'acquisition'>, { cards }: ShopBook): Known {
  const last = cardsOfKind(cards, 'sale').findLast((sale) => sale.workshopId === workshopId);
  return { acquisition: id, on: dayHere(), currency: currency ?? '', regime: eligible === false ? 'ordinary' : 'margin', place: last?.place ?? '', ...(last === undefined ? {} : { rounding: last.rounding }) };
}
