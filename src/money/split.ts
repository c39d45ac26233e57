import { type Fraction, fractionOf } from './fraction.ts';

/**
 * Parts of a total by shares that need not sum to one; the parts sum exactly to the total.
 * Each part is cut towards nought, then the units left go one each to the largest remainders, the first on a tie.
 * Shares are 0 or more and not all nought; a negative total gives the mirror image.
 * @source HAMILTON-1792 largest remainder
 */
export function splitMinor(total: bigint | number, shares: readonly (number | string)[]): readonly bigint[] {
  const exact = BigInt(total);
  if (exact < 0n) return splitMinor(-exact, shares).map((part) => -part);
  const weights = overOneBottom(shares.map(fractionOf));
  const sum = weights.reduce((a, b) => a + b, 0n);
  if (sum <= 0n || weights.some((weight) => weight < 0n)) throw new Error('shares must be 0 or more, and not all 0');
  const floors = weights.map((weight) => (exact * weight) / sum);
  const left = Number(exact - floors.reduce((a, b) => a + b, 0n));
  const order = weights.map((weight, index) => ({ index, rest: (exact * weight) % sum })).sort((a, b) => (a.rest === b.rest ? a.index - b.index : a.rest > b.rest ? -1 : 1));
  const raised = new Set(order.slice(0, left).map(({ index }) => index));
  return floors.map((floor, index) => (raised.has(index) ? floor + 1n : floor));
}

/** Numerators over one denominator: all are powers of ten, so that the largest serves. */
function overOneBottom(fractions: readonly Fraction[]): readonly bigint[] {
  const largest = fractions.reduce((most, { bottom }) => (bottom > most ? bottom : most), 1n);
  return fractions.map(({ top, bottom }) => top * (largest / bottom));
}
