import { type Fraction, percentAsFraction } from './fraction.ts';
import { roundFraction, type Rounding } from './rounding.ts';

/** The share of a gross amount that is tax: r/(100 + r), so 1/6 at 20 %. Rate in percent, 0 or more. */
export function taxShareOfGross(ratePct: number | string): Fraction {
  const { top, bottom } = percentAsFraction(ratePct);
  return { top, bottom: bottom + top };
}

/** Tax on a net amount, in smallest units: net × r/100, rounded once. */
export function taxOnNet(net: bigint | number, ratePct: number | string, rounding: Rounding): bigint {
  const { top, bottom } = percentAsFraction(ratePct);
  return roundFraction({ top: BigInt(net) * top, bottom }, rounding);
}

/** Tax held in a gross amount, in smallest units: gross × r/(100 + r), rounded once. */
export function taxInGross(gross: bigint | number, ratePct: number | string, rounding: Rounding): bigint {
  const { top, bottom } = taxShareOfGross(ratePct);
  return roundFraction({ top: BigInt(gross) * top, bottom }, rounding);
}

/**
 * Tax under a margin scheme for second-hand goods: of the margin between sale and purchase, the share that is tax; never negative.
 * What restoration cost is no part of the purchase price. It describes the rule; whether it may be used is for an accountant to say.
 * @source VATMARG02300; EU-2006-112 art. 315
 */
export function taxOnMargin({ purchaseMinor, saleMinor, ratePct, rounding }: { readonly purchaseMinor: number; readonly saleMinor: number; readonly ratePct: number | string; readonly rounding: Rounding }): { readonly margin: bigint; readonly tax: bigint } {
  const margin = BigInt(saleMinor) - BigInt(purchaseMinor);
  return { margin, tax: margin > 0n ? taxInGross(margin, ratePct, rounding) : 0n };
}
