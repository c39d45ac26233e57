import { type Rounding, taxInGross, taxOnMargin } from '#money';
import { type CashFlow, presentValueOf } from './cash-flow.ts';

/** How the sale is taxed: on the margin over the purchase, on the whole price, or not. Which one may be used is for an accountant to say. */
export type SaleTax = 'margin' | 'ordinary' | 'none';

export interface BreakEvenQuestion {
  /** Every flow but the sale. */
  readonly cashFlows: readonly CashFlow[];
  readonly saleMonth: number;
  readonly annualRatePct: number;
  readonly tax: SaleTax;
  readonly ratePct: number;
  /** What the instrument was bought for; restoration is no part of it. */
  readonly purchaseMinor: number;
  readonly rounding: Rounding;
}

/** Tax in a sale price, tax included, in smallest units. @source VATMARG02300; EU-2006-112 art. 315 */
export function taxOfSale(saleMinor: number, { tax, ratePct, purchaseMinor, rounding }: Pick<BreakEvenQuestion, 'tax' | 'ratePct' | 'purchaseMinor' | 'rounding'>): number {
  if (tax === 'none') return 0;
  return Number(tax === 'ordinary' ? taxInGross(saleMinor, ratePct, rounding) : taxOnMargin({ purchaseMinor, saleMinor, ratePct, rounding }).tax);
}

/**
 * The lowest price, tax included, at which the present value is not below nought; null where it lies beyond what an amount can hold.
 * Found by bisection over whole units, since a price less its tax never falls as the price rises.
 */
export function breakEvenSaleOf(question: BreakEvenQuestion): number | null {
  const needed = -presentValueOf(question.cashFlows, question.annualRatePct) * (1 + question.annualRatePct / 100) ** (question.saleMonth / 12);
  const isEnough = (sale: number): boolean => sale - taxOfSale(sale, question) >= needed;
  let [low, high] = [-1, 1];
  while (!isEnough(high)) {
    low = high;
    high *= 2;
    if (!Number.isSafeInteger(high)) return null;
  }
  if (isEnough(0)) return 0;
  while (high - low > 1) {
    const middle = low + Math.floor((high - low) / 2);
    if (isEnough(middle)) high = middle;
    else low = middle;
  }
  return high;
}
