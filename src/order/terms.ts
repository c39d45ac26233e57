import { type Result, refuse, ok } from '#result';
import { usualAllowances } from '#strings';
import type { UnitId } from '#units';

/** A figure that may be stated beside an order. */
export interface OrderField {
  readonly unit: UnitId;
  readonly range: readonly [number, number];
  /** Taken where it is not stated, and said; without one it stays not stated. @source PRACTICE */
  readonly usual?: number;
}

/** What may be stated beside an order; options of the command line, queries of the API and fields of the screen derive from it. */
export const orderFields = {
  /** Tuning pin to the front end of the speaking length. */
  frontLengthMm: { unit: 'mm', range: [0, 1500] },
  /** Bridge to hitch pin, where it was not measured. */
  backLengthMm: { unit: 'mm', range: [0, 1500] },
  pinTurns: { unit: '1', range: [0, 10], usual: usualAllowances.pinTurns },
  pinDiameterMm: { unit: 'mm', range: [4, 12], usual: usualAllowances.pinDiameterMm },
  hitchMm: { unit: 'mm', range: [0, 500], usual: usualAllowances.hitchMm },
  spareMm: { unit: 'mm', range: [0, 1000], usual: usualAllowances.spareMm },
  /** On top of every line of wire to buy. */
  wastePct: { unit: 'pct', range: [0, 100] },
  coreToleranceMm: { unit: 'mm', range: [0, 1] },
  wrapToleranceMm: { unit: 'mm', range: [0, 1] },
  lengthToleranceMm: { unit: 'mm', range: [0, 50] },
} as const satisfies Readonly<Record<string, OrderField>>;

export type OrderFieldName = keyof typeof orderFields;

/** Names of the figures, in the order they are asked in. */
export const orderFieldNames = Object.keys(orderFields) as readonly OrderFieldName[];

/** What is stated of an order; a field that is absent was not stated. */
export type OrderTerms = Readonly<Partial<Record<OrderFieldName, number>>>;

/** Checks what is stated; refuses by field what cannot be. */
export function checkOrderTerms(given: OrderTerms): Result<OrderTerms> {
  const issues = orderFieldNames.flatMap((name) => {
    const value = given[name];
    const [min, max] = orderFields[name].range;
    return value === undefined || (value >= min && value <= max) ? [] : [{ code: 'range' as const, path: name, given: value, allowed: `${String(min)} to ${String(max)}`, params: { min, max } }];
  });
  return issues.length === 0 ? ok(given) : refuse(...issues);
}

/** A figure as stated, else as usual; `undefined` where neither is. */
export function termOf(terms: OrderTerms, name: OrderFieldName): number | undefined {
  const field: OrderField = orderFields[name];
  return terms[name] ?? field.usual;
}
