import type { Issue } from '#result';
import type { CardOf, ShopCard, ShopCardGiven } from './records.ts';

type Stock = CardOf<'stock'>;

/** Something in stock with how much of it there is, and whether it is time to order. */
export interface StockLevel {
  readonly stock: Stock;
  readonly level: number;
  /** True at the reorder point and below; never where none is stated. */
  readonly isLow: boolean;
  /** On order and not yet received. */
  readonly onOrder: number;
}

/** Figures closer than this are one: sums of decimals differ in their last binary digit. */
const SAME = 1e-9;

const rounded = (sum: number): number => Math.round(sum / SAME) * SAME;

/** How much of everything in stock there is: the sum of what was put in and taken out. @source OWN */
export function stockLevels(cards: readonly ShopCard[]): readonly StockLevel[] {
  const [levels, ordered] = [new Map<string, number>(), new Map<string, number>()];
  const add = (sums: Map<string, number>, id: string, amount: number): void => { sums.set(id, (sums.get(id) ?? 0) + amount); };
  for (const card of cards) {
    if (card.kind === 'stockMove') add(levels, card.stock, card.amount);
    if (card.kind === 'purchase' && card.status === 'ordered') for (const { stock, amount } of card.lines) if (stock !== null) add(ordered, stock, amount);
  }
  return cards.filter((card): card is Stock => card.kind === 'stock').map((stock) => {
    const level = Number(rounded(levels.get(stock.id) ?? 0).toPrecision(12));
    return { stock, level, isLow: stock.reorderAt !== null && level <= stock.reorderAt + SAME, onOrder: Number(rounded(ordered.get(stock.id) ?? 0).toPrecision(12)) };
  });
}

/** How much there is of one thing: the sum of its moves, free of what binary digits add to decimals. */
export function sumOfAmounts(amounts: readonly number[]): number {
  return Number(rounded(amounts.reduce((sum, amount) => sum + amount, 0)).toPrecision(12));
}

/** Refuses to take out more than there is: a count comes first. */
export function shortOf(move: Extract<ShopCardGiven, { kind: 'stockMove' }>, there: number): readonly Issue[] {
  if (there + move.amount >= -SAME) return [];
  return [{ code: 'range', path: 'amount', given: move.amount, allowed: `at most ${String(there)} taken out`, params: { reason: 'notInStock', there } }];
}
