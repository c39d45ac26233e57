/** A row of one quantity up the keyboard; null where there is no number. */
export type Row = readonly (number | null)[];

/** What every value should be and by how much it may miss it, ends included. */
export interface Band {
  readonly target: number;
  readonly tolerance: number;
}

/** |x − centre| ≤ reach, the end included however its decimals came out in binary. */
export function isWithin(value: number, centre: number, reach: number): boolean {
  const rounding = 4 * Number.EPSILON * (Math.abs(value) + Math.abs(centre) + Math.abs(reach));
  return Math.abs(value - centre) <= reach + rounding;
}

/**
 * How many values of a row lie inside the band: the one count behind every page, print and command.
 * |x − T| ≤ t − U, ends included; `guard` gives U at a place of the row, 0 when left out. A null, which stands for an outcome
 * or a missing weight, is never inside. A keyboard from 47 to 50 g is inside 49 ± 2.
 * @source PRACTICE · JCGM-106 guarded acceptance with a guard band of U
 */
export function insideCountOf(values: Row, { target, tolerance }: Band, guard: (index: number) => number = () => 0): number {
  return values.filter((value, index) => {
    const reach = tolerance - guard(index);
    return value !== null && reach >= 0 && isWithin(value, target, reach);
  }).length;
}

/** Decimals a difference of weights is held to: far below any reading, far above what binary fractions leave behind. */
const DIFFERENCE_DECIMALS = 10;

/** Value less target as their decimals have it, so that 49.5 less 49.3 is 0.2 and not a hair more. */
export function missOf(value: number, target: number): number {
  return Number((value - target).toFixed(DIFFERENCE_DECIMALS));
}
