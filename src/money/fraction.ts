/** An exact rational number; `bottom` is above nought. */
export interface Fraction {
  readonly top: bigint;
  readonly bottom: bigint;
}

const DECIMAL = /^(?<sign>-?)(?<whole>\d+)(?:\.(?<part>\d+))?(?:e(?<exponent>[+-]?\d+))?$/u;

/**
 * The decimal a number is written as, exactly: 0.1 is one tenth, not the binary figure next to it.
 * Takes any finite number, and text such as `17.5`.
 * @throws Error for anything else: a broken invariant, since figures as typed are read by `parseMoney` or `parseMeasure`
 */
export function fractionOf(decimal: number | string): Fraction {
  const groups = DECIMAL.exec(String(decimal))?.groups;
  if (groups === undefined) throw new Error(`no decimal number: ${String(decimal)}`);
  const { sign = '', whole = '', part = '', exponent = '0' } = groups;
  const digits = BigInt(sign + whole + part);
  const places = part.length - Number(exponent);
  return places > 0 ? { top: digits, bottom: 10n ** BigInt(places) } : { top: digits * 10n ** BigInt(-places), bottom: 1n };
}

/** A percentage as a fraction: 17.5 gives 175/1000. */
export function percentAsFraction(pct: number | string): Fraction {
  const { top, bottom } = fractionOf(pct);
  return { top, bottom: bottom * 100n };
}

/** The product of fractions; of none, one. */
export function productOf(...factors: readonly Fraction[]): Fraction {
  return factors.reduce((product, { top, bottom }) => ({ top: product.top * top, bottom: product.bottom * bottom }), { top: 1n, bottom: 1n });
}

/** The sum of fractions; of none, nought. */
export function totalOf(...terms: readonly Fraction[]): Fraction {
  return terms.reduce((total, { top, bottom }) => ({ top: total.top * bottom + top * total.bottom, bottom: total.bottom * bottom }), { top: 0n, bottom: 1n });
}
