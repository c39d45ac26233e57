import { type Fraction, fractionOf, percentAsFraction, productOf, totalOf } from '#money';

/** Work by three points at a price of the hour; h and whole smallest units. */
export interface PricedWork {
  readonly low: number;
  readonly likely: number;
  readonly high: number;
  readonly chancePct: number;
  readonly rateMinor: number;
}

/** Hours to be expected of work: (a + 4m + b)/6, times its chance; exact. @source PERT-1959 */
export function expectedHoursOf({ low, likely, high, chancePct }: Omit<PricedWork, 'rateMinor'>): Fraction {
  return productOf(totalOf(fractionOf(low), productOf(fractionOf(4), fractionOf(likely)), fractionOf(high)), { top: 1n, bottom: 6n }, percentAsFraction(chancePct));
}

/** What work costs before it is rounded: its hours at their price. @source OWN */
export function workCostOf(work: PricedWork): Fraction {
  return productOf(expectedHoursOf(work), fractionOf(work.rateMinor));
}

/** What so much of a thing costs before it is rounded. @source OWN */
export function itemCostOf({ priceMinor, quantity }: { readonly priceMinor: number; readonly quantity: number }): Fraction {
  return productOf(fractionOf(priceMinor), fractionOf(quantity));
}

const PLACES = 10n ** 15n;

/** The number closest to a fraction of nought or more, to fifteen places. */
export function numberOf({ top, bottom }: Fraction): number {
  return Number(top / bottom) + Number(((top % bottom) * PLACES) / bottom) / Number(PLACES);
}
