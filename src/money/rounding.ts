import type { Fraction } from './fraction.ts';

/**
 * The ways a document may round, one for the whole document: `half-up` takes halves away from nought, `half-even` to the
 * even neighbour (the banker's way), `down` cuts towards nought.
 */
export const roundings = ['half-up', 'half-even', 'down'] as const;
export type Rounding = (typeof roundings)[number];

/** A fraction as a whole number of smallest units, by the rounding named. @source IEEE-754 roundTiesToAway, roundTiesToEven, roundTowardZero */
export function roundFraction({ top, bottom }: Fraction, rounding: Rounding): bigint {
  const whole = top / bottom;
  const rest = 2n * (top % bottom);
  const size = rest < 0n ? -rest : rest;
  const isAway = rounding !== 'down' && (size > bottom || (size === bottom && (rounding === 'half-up' || whole % 2n !== 0n)));
  return isAway ? whole + (top < 0n ? -1n : 1n) : whole;
}
