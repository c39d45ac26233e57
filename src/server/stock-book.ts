import { type StockRequest, stockBookOf } from '#estimate';
import type { BenchStore } from '#store';
import { type StockBook, bookOf, stockBookKinds } from '#workshop';

/** What is asked of the stock book, its year as a number. */
export function stockRequestOf({ year, ...rest }: Omit<StockRequest, 'year'> & { readonly year?: string | undefined }): StockRequest {
  return { ...rest, year: year === undefined ? null : Number(year) };
}

/** The stock book as asked for. */
export async function stockBookIn(store: BenchStore, asked: StockRequest): Promise<StockBook> {
  return stockBookOf((await store.listShopCards({ kinds: stockBookKinds })).cards, asked);
}

/** The stock book with the newest event of the book it is drawn from. */
export async function stockAndHead(store: BenchStore, asked: StockRequest): Promise<{ readonly stock: StockBook; readonly head: { readonly seq: number; readonly hash: string } }> {
  const stock = await stockBookIn(store, asked);
  const [newest] = stock.lines.length === 0 ? [] : await store.listEvents(bookOf(stock.book), { limit: 1 });
  return { stock, head: newest ?? { seq: 0, hash: '' } };
}
