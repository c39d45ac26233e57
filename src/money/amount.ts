import { type Issue, type Result, ok, refuse } from '#result';
import type { Currency } from './currency.ts';
import { type Fraction, productOf } from './fraction.ts';
import { type Rounding, roundFraction } from './rounding.ts';

/** An amount of money: whole smallest units of one currency. Inside a calculation amounts are `bigint`; at its doors, safe integers. */
export interface Money {
  readonly minor: number;
  readonly currency: Currency;
}

/** Furthest from nought that an amount may be: beyond it a number no longer holds every whole unit. */
export const LARGEST_MINOR = Number.MAX_SAFE_INTEGER;

/** An amount for the door of a calculation; refused where a number would no longer hold it to the last unit. */
export function minorFrom(exact: bigint, path: string): Result<number> {
  const minor = Number(exact);
  return Number.isSafeInteger(minor) ? ok(minor) : refuse(tooLarge(exact, path));
}

function tooLarge(exact: bigint, path: string): Issue {
  return { code: 'range', path, given: exact.toString(), allowed: `an amount between −${String(LARGEST_MINOR)} and ${String(LARGEST_MINOR)} smallest units`, params: { min: -LARGEST_MINOR, max: LARGEST_MINOR, reason: 'amountTooLarge' } };
}

/** An amount times exact factors (hours, a rate, a share), rounded once, at the end. Any magnitude; nothing overflows. */
export function scaled(minor: bigint | number, rounding: Rounding, ...factors: readonly Fraction[]): bigint {
  return roundFraction(productOf({ top: BigInt(minor), bottom: 1n }, ...factors), rounding);
}

/** The exact sum of amounts of one currency, in smallest units. */
export function sumMinor(amounts: readonly (bigint | number)[]): bigint {
  return amounts.reduce<bigint>((sum, minor) => sum + BigInt(minor), 0n);
}
