import { type Currency, type Fraction, currencyOf, minorFrom, roundFraction, sumMinor } from '#money';
import { type Result, all, andThen, map } from '#result';
import type { Alternative, Estimate, EstimateLine } from '#workshop';
import { type HoursAnswer, type HoursQuestion, simulateHours } from './hours/simulate.ts';
import { jobPriceAsked, jobPriceOf } from './job-price.ts';
import { expectedHoursOf, itemCostOf, numberOf, workCostOf } from './line-cost.ts';

/** How often the hours of an estimate are drawn, and from which seed: the same estimate gives the same figures everywhere. */
const DRAWING = { runs: 10_000, seed: 1 } as const;

/** What the hours of an alternative are drawn from; absent where it holds no work. */
export function hoursAsked(estimate: Estimate, way: Pick<Alternative, 'id'>): HoursQuestion | undefined {
  const tasks = linesOfWay(estimate, way, 'labour').map(({ low, likely, high, chancePct }) => ({ low, likely, high, chancePct }));
  return tasks.length === 0 ? undefined : { tasks, correlation: estimate.correlation, ...DRAWING };
}

/** One line of an alternative with what it costs. */
export interface LineFigures {
  readonly line: EstimateLine;
  /** Hours to be expected, with the chance that the work comes up; 0 for what is no work. */
  readonly expectedH: number;
  readonly costMinor: number;
}

/** An alternative worked out; every sum is of the rounded figures shown, so that all faces agree to the last unit. */
export interface EstimateFigures {
  readonly currency: Currency;
  readonly lines: readonly LineFigures[];
  readonly labourMinor: number;
  readonly partsMinor: number;
  readonly outsideMinor: number;
  /** Hours added for doubt, and what they cost. */
  readonly contingencyH: number;
  readonly contingencyMinor: number;
  readonly overheadMinor: number;
  readonly costMinor: number;
  readonly profitMinor: number;
  /** Price before tax and without what the instrument itself was bought for. */
  readonly netMinor: number;
  readonly taxMinor: number;
  /** What is to be asked for, tax and the instrument included where it is the shop’s. */
  readonly totalMinor: number;
  /** Hours of the alternative; absent where it holds no work. */
  readonly hours?: HoursAnswer;
  readonly expectedH: number;
  /** The longest wait for parts or work of others; null where none is stated. */
  readonly longestLeadDays: number | null;
}

/** What of an estimate belongs to a way. */
export function linesOfWay<K extends EstimateLine['kind']>({ lines }: Estimate, { id }: Pick<Alternative, 'id'>, kind: K): readonly Extract<EstimateLine, { readonly kind: K }>[] {
  return lines.filter((line): line is Extract<EstimateLine, { readonly kind: K }> => line.kind === kind && line.ways.includes(id));
}

/**
 * One alternative of an estimate in money: lines, doubt, overhead, price, tax. Each figure is rounded once by the rounding of the estimate;
 * sums are exact sums of rounded figures. Refused where an amount is too large to be held.
 */
export function estimateFiguresOf(estimate: Estimate, { id }: Pick<Alternative, 'id'>): Result<EstimateFigures> {
  const lines = estimate.lines.flatMap((line, index) => (line.ways.includes(id) ? [{ line, path: `lines[${String(index)}]`, cost: roundFraction(costOf(line, estimate), estimate.rounding) }] : []));
  const asked = hoursAsked(estimate, { id });
  const hours = asked === undefined ? undefined : simulateHours(asked);
  const sumOf = (kind: EstimateLine['kind']): bigint => sumMinor(lines.flatMap(({ line, cost }) => (line.kind === kind ? [cost] : [])));
  const sums = { labourMinor: sumOf('labour'), partsMinor: sumOf('part'), outsideMinor: sumOf('outside') };
  const held = andThen(all(lines.map(({ cost, path }) => minorFrom(cost, path))), () => all(Object.entries(sums).map(([name, sum]) => minorFrom(sum, name))));
  return andThen(held, ([labourMinor = 0, partsMinor = 0, outsideMinor = 0]) => {
    const direct = { labourMinor, partsMinor, outsideMinor };
    return map(jobPriceOf(jobPriceAsked(estimate, direct, hours)), ({ addedH, contingencyMinor, overheadMinor, costMinor, profitMinor, netMinor, taxMinor, totalMinor }) => ({
      ...direct, contingencyMinor, overheadMinor, costMinor, profitMinor, netMinor, taxMinor, totalMinor, contingencyH: addedH,
      currency: currencyOf(estimate.currency) ?? (estimate.currency as Currency),
      lines: lines.map(({ line, cost }) => ({ line, expectedH: line.kind === 'labour' ? numberOf(expectedHoursOf(line)) : 0, costMinor: Number(cost) })),
      ...(hours === undefined ? {} : { hours }),
      expectedH: hours?.exactMeanH ?? 0,
      longestLeadDays: longestOf(lines.map(({ line }) => line)),
    }));
  });
}

function costOf(line: EstimateLine, { rateMinor }: Estimate): Fraction {
  if (line.kind === 'labour') return workCostOf({ ...line, rateMinor: line.rateMinor ?? rateMinor });
  return itemCostOf({ priceMinor: line.priceMinor, quantity: line.kind === 'part' ? line.quantity : 1 });
}

function longestOf(lines: readonly EstimateLine[]): number | null {
  const waits = lines.flatMap((line) => (line.kind === 'labour' || line.leadDays === null ? [] : [line.leadDays]));
  return waits.length === 0 ? null : Math.max(...waits);
}
