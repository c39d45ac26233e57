import { type Currency, type Fraction, type Rounding, currencyOf, fractionOf, minorFrom, percentAsFraction, productOf, roundFraction, scaled, sumMinor, taxOnNet, totalOf } from '#money';
import { type Result, all, andThen, map } from '#result';
import type { Alternative, Estimate, EstimateLine, LabourLine } from '#workshop';
import { type HoursAnswer, type HoursQuestion, simulateHours } from './hours/simulate.ts';

/** How often the hours of an estimate are drawn, and from which seed: the same estimate gives the same figures everywhere. */
const DRAWING = { runs: 10_000, seed: 1 } as const;

/** What the hours of an alternative are drawn from; absent where it holds no work. */
export function hoursAsked({ lines, correlation }: Estimate, { id }: Pick<Alternative, 'id'>): HoursQuestion | undefined {
  const tasks = lines.flatMap((line) => (line.kind === 'labour' && line.ways.includes(id) ? [{ low: line.low, likely: line.likely, high: line.high, chancePct: line.chancePct }] : []));
  return tasks.length === 0 ? undefined : { tasks, correlation, ...DRAWING };
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

/**
 * One alternative of an estimate in money: lines, doubt, overhead, price, tax. Each figure is rounded once by the rounding of the estimate;
 * sums are exact sums of rounded figures. Price = cost·(1 + markup) or cost/(1 − margin).
 * Refused where an amount is too large to be held.
 */
export function estimateFiguresOf(estimate: Estimate, { id }: Pick<Alternative, 'id'>): Result<EstimateFigures> {
  const lines = estimate.lines.flatMap((line, index) => (line.ways.includes(id) ? [{ line, path: `lines[${String(index)}]`, cost: costOf(line, estimate) }] : []));
  const asked = hoursAsked(estimate, { id });
  const hours = asked === undefined ? undefined : simulateHours(asked);
  const sumOf = (kind: EstimateLine['kind']): bigint => sumMinor(lines.flatMap(({ line, cost }) => (line.kind === kind ? [cost] : [])));
  const direct = sumMinor(lines.map(({ cost }) => cost));
  const doubt = contingencyOf(estimate, direct, hours);
  const amounts = amountsOf(estimate, { labourMinor: sumOf('labour'), partsMinor: sumOf('part'), outsideMinor: sumOf('outside') }, doubt.cost);
  const held = andThen(all(lines.map(({ cost, path }) => minorFrom(cost, path))), () => all(Object.entries(amounts).map(([name, each]) => minorFrom(each, name))));
  return map(held, () => ({
    ...(Object.fromEntries(Object.entries(amounts).map(([name, each]) => [name, Number(each)])) as { readonly [N in keyof typeof amounts]: number }),
    currency: currencyOf(estimate.currency) ?? (estimate.currency as Currency),
    lines: lines.map(({ line, cost }) => ({ line, expectedH: line.kind === 'labour' ? numberOf(expectedHoursOf(line)) : 0, costMinor: Number(cost) })),
    contingencyH: doubt.hours,
    ...(hours === undefined ? {} : { hours }),
    expectedH: hours?.exactMeanH ?? 0,
    longestLeadDays: longestOf(lines.map(({ line }) => line)),
  }));
}

interface Direct {
  readonly labourMinor: bigint;
  readonly partsMinor: bigint;
  readonly outsideMinor: bigint;
}

/** From the direct cost to the total: doubt, overhead, price, tax, each rounded once. */
function amountsOf(estimate: Estimate, direct: Direct, contingencyMinor: bigint) {
  const before = direct.labourMinor + direct.partsMinor + direct.outsideMinor + contingencyMinor;
  const overheadMinor = scaled(before, estimate.rounding, percentAsFraction(estimate.overheadPct));
  const costMinor = before + overheadMinor;
  const netMinor = priceOf(costMinor, estimate);
  const instrument = estimate.owner === 'shop' ? BigInt(estimate.purchaseMinor ?? 0) : 0n;
  const taxMinor = taxOf(estimate, netMinor, instrument);
  return { ...direct, contingencyMinor, overheadMinor, costMinor, profitMinor: netMinor - costMinor, netMinor, taxMinor, totalMinor: instrument + netMinor + taxMinor };
}

/** Hours to be expected of a line: (a + 4m + b)/6, times its chance; exact. @source PERT-1959 */
function expectedHoursOf({ low, likely, high, chancePct }: LabourLine): Fraction {
  return productOf(totalOf(fractionOf(low), productOf(fractionOf(4), fractionOf(likely)), fractionOf(high)), { top: 1n, bottom: 6n }, percentAsFraction(chancePct));
}

const numberOf = ({ top, bottom }: Fraction): number => Number(top) / Number(bottom);

function costOf(line: EstimateLine, { rateMinor, rounding }: Estimate): bigint {
  if (line.kind === 'labour') return scaled(line.rateMinor ?? rateMinor, rounding, expectedHoursOf(line));
  return line.kind === 'part' ? scaled(line.priceMinor, rounding, fractionOf(line.quantity)) : BigInt(line.priceMinor);
}

/** What is added for doubt: a share of the direct cost, or the hours up to a quantile of the runs, to a hundredth upwards, at the rate of the estimate. */
function contingencyOf({ contingency: { kind, pct }, rateMinor, rounding }: Estimate, direct: bigint, hours: HoursAnswer | undefined): { readonly hours: number; readonly cost: bigint } {
  if (kind === 'none' || (kind !== 'pct' && hours === undefined)) return { hours: 0, cost: 0n };
  if (kind === 'pct' || hours === undefined) return { hours: 0, cost: scaled(direct, rounding, percentAsFraction(pct)) };
  const up = Math.max(0, (kind === 'p80' ? hours.p80H : hours.p90H) - hours.exactMeanH);
  const added = Math.ceil(up * 100) / 100;
  return { hours: added, cost: scaled(rateMinor, rounding, fractionOf(added)) };
}

function priceOf(cost: bigint, { pricing: { kind, pct }, rounding }: Estimate): bigint {
  const { top, bottom } = percentAsFraction(pct);
  return roundFraction(kind === 'markup' ? { top: cost * (bottom + top), bottom } : { top: cost * bottom, bottom: bottom - top }, rounding);
}

/** Ordinary tax falls on the whole price before tax; under a margin scheme on what the price adds to the purchase. @source EU-2006-112 art. 315; VATMARG02300 */
function taxOf({ tax: { regime, ratePct }, rounding }: { readonly tax: Estimate['tax']; readonly rounding: Rounding }, net: bigint, instrument: bigint): bigint {
  if (regime === 'export' || regime === 'none') return 0n;
  return taxOnNet(regime === 'ordinary' ? instrument + net : net, ratePct, rounding);
}

function longestOf(lines: readonly EstimateLine[]): number | null {
  const waits = lines.flatMap((line) => (line.kind === 'labour' || line.leadDays === null ? [] : [line.leadDays]));
  return waits.length === 0 ? null : Math.max(...waits);
}
