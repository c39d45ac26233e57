/** Money that comes in (above nought) or goes out (below), so many months from now. */
export interface CashFlow {
  readonly month: number;
  readonly amountMinor: number;
}

/** Flows in the order of months, those of one month as one. Exact as long as the sums are. */
export function byMonth(flows: readonly CashFlow[]): readonly CashFlow[] {
  const sums = new Map<number, number>();
  for (const { month, amountMinor } of flows) sums.set(month, (sums.get(month) ?? 0) + amountMinor);
  return [...sums].map(([month, amountMinor]) => ({ month, amountMinor })).sort((a, b) => a.month - b.month);
}

/** Present value Σ CF/(1 + r)^(months/12), before rounding; r a yearly rate in percent above −100. @source BREALEY-MYERS net present value */
export function presentValueOf(flows: readonly CashFlow[], annualRatePct: number): number {
  const growth = 1 + annualRatePct / 100;
  return flows.reduce((sum, { month, amountMinor }) => sum + amountMinor * growth ** (-month / 12), 0);
}

/** The first month from which on what has come in never again falls below what has gone out; null where there is none. */
export function paybackMonthOf(flows: readonly CashFlow[]): number | null {
  let [total, month]: [number, number | null] = [0, null];
  for (const flow of byMonth(flows)) {
    total += flow.amountMinor;
    month = total < 0 ? null : (month ?? flow.month);
  }
  return month;
}

/** How often the flows, in the order of months, change between in and out. */
export function signChangesOf(flows: readonly CashFlow[]): number {
  const signs = byMonth(flows).map(({ amountMinor }) => Math.sign(amountMinor)).filter((sign) => sign !== 0);
  return signs.filter((sign, index) => index > 0 && sign !== signs[index - 1]).length;
}

/** Bounds between which a rate of return is looked for: a yearly growth by 1e-6 to 1e6. */
const LARGEST_LOG_GROWTH = Math.log(1e6);

/**
 * Internal rate of return in percent a year: the r at which the present value is nought.
 * Only where flows change sign exactly once, since else there may be none or several; null otherwise, and beyond a growth of a million a year.
 * @source DESCARTES-1637 rule of signs; bisection in ln(1 + r)
 */
export function rateOfReturnOf(flows: readonly CashFlow[]): number | null {
  if (signChangesOf(flows) !== 1) return null;
  const at = (log: number): number => presentValueOf(flows, 100 * Math.expm1(log));
  let [low, high] = [-LARGEST_LOG_GROWTH, LARGEST_LOG_GROWTH];
  const sign = Math.sign(at(high));
  if (sign === 0 || Math.sign(at(low)) === sign) return null;
  for (let step = 0; step < 200 && high - low > 1e-15; step += 1) {
    const middle = (low + high) / 2;
    if (Math.sign(at(middle)) === sign) high = middle;
    else low = middle;
  }
  return 100 * Math.expm1((low + high) / 2);
}
