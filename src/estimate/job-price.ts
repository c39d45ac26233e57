import { type Fraction, type Rounding, fractionOf, minorFrom, percentAsFraction, productOf, roundFraction, sumMinor, totalOf } from '#money';
import { type Result, all, map } from '#result';
import type { Estimate, TaxRegime } from '#workshop';
import type { HoursAnswer } from './hours/simulate.ts';
import { numberOf } from './line-cost.ts';

/** What a job costs directly, each a sum of rounded lines. */
export interface DirectCost {
  readonly labourMinor: number;
  readonly partsMinor: number;
  readonly outsideMinor: number;
}

/** What the price of a job follows from. */
export interface JobPriceQuestion extends DirectCost {
  /** Share of the direct cost added for doubt. */
  readonly contingencyPct: number;
  /** Hours added for doubt: from those expected up to those the job stays within. */
  readonly doubt?: { readonly expectedH: number; readonly withinH: number; readonly rateMinor: number } | undefined;
  readonly overheadPct: number;
  readonly pricing: Estimate['pricing']['kind'];
  readonly pricingPct: number;
  /** What the instrument was bought for; 0 where it is a customer’s. */
  readonly purchaseMinor: number;
  readonly regime: TaxRegime;
  readonly ratePct: number;
  readonly rounding: Rounding;
}

/** From the direct cost of a job to what is asked for it: each step before and after its rounding. */
export type JobPrice = Readonly<Record<'addedH' | 'contingencyExactMinor' | 'contingencyMinor' | 'overheadExactMinor' | 'overheadMinor' | 'costMinor' | 'netExactMinor' | 'netMinor' | 'profitMinor' | 'taxExactMinor' | 'taxMinor' | 'totalMinor', number>>;

/** What the price of a way is asked with: its direct cost and, where doubt is taken from them, its hours. */
export function jobPriceAsked({ contingency: { kind, pct }, rateMinor, overheadPct, pricing, owner, purchaseMinor, tax: { regime, ratePct }, rounding }: Estimate, direct: DirectCost, hours: HoursAnswer | undefined): JobPriceQuestion {
  const within = kind === 'p80' ? hours?.p80H : kind === 'p90' ? hours?.p90H : undefined;
  return {
    ...direct, contingencyPct: kind === 'pct' ? pct : 0, ...(hours === undefined || within === undefined ? {} : { doubt: { expectedH: hours.exactMeanH, withinH: within, rateMinor } }),
    overheadPct, pricing: pricing.kind, pricingPct: pricing.pct, purchaseMinor: owner === 'shop' ? (purchaseMinor ?? 0) : 0, regime, ratePct, rounding,
  };
}

/**
 * The price of a job, each step rounded once, sums exact sums of rounded figures.
 * Hours of doubt to a hundredth upwards, h = ⌈100·max(0, P − μ)⌉/100; doubt = direct·c + rate·h; overhead = (direct + doubt)·o; price = cost·(1 + markup) or cost/(1 − margin).
 * Ordinary tax falls on the whole price before tax; under a margin scheme on what the price adds to the purchase.
 * Refused where an amount is too large to be held. @source EU-2006-112 art. 315; VATMARG02300
 */
export function jobPriceOf(question: JobPriceQuestion): Result<JobPrice> {
  const { labourMinor, partsMinor, outsideMinor, contingencyPct, doubt, overheadPct, rounding } = question;
  const direct = sumMinor([labourMinor, partsMinor, outsideMinor]);
  const addedH = doubt === undefined ? 0 : Math.ceil(Math.max(0, doubt.withinH - doubt.expectedH) * 100) / 100;
  const contingency = totalOf(times(direct, percentAsFraction(contingencyPct)), productOf(fractionOf(doubt?.rateMinor ?? 0), fractionOf(addedH)));
  const before = direct + roundFraction(contingency, rounding);
  const overhead = times(before, percentAsFraction(overheadPct));
  const cost = before + roundFraction(overhead, rounding);
  const price = priceOf(cost, question);
  const net = roundFraction(price, rounding);
  const tax = taxOf(net, question);
  const taxed = roundFraction(tax, rounding);
  const amounts = { contingencyMinor: roundFraction(contingency, rounding), overheadMinor: roundFraction(overhead, rounding), costMinor: cost, netMinor: net, profitMinor: net - cost, taxMinor: taxed, totalMinor: BigInt(question.purchaseMinor) + net + taxed };
  return map(all(Object.entries(amounts).map(([name, amount]) => minorFrom(amount, name))), () => ({
    ...(Object.fromEntries(Object.entries(amounts).map(([name, amount]) => [name, Number(amount)])) as { readonly [N in keyof typeof amounts]: number }),
    addedH, contingencyExactMinor: numberOf(contingency), overheadExactMinor: numberOf(overhead), netExactMinor: numberOf(price), taxExactMinor: numberOf(tax),
  }));
}

const times = (amount: bigint, factor: Fraction): Fraction => productOf({ top: amount, bottom: 1n }, factor);

function priceOf(cost: bigint, { pricing, pricingPct }: JobPriceQuestion): Fraction {
  const { top, bottom } = percentAsFraction(pricingPct);
  return pricing === 'markup' ? { top: cost * (bottom + top), bottom } : { top: cost * bottom, bottom: bottom - top };
}

function taxOf(net: bigint, { regime, ratePct, purchaseMinor }: JobPriceQuestion): Fraction {
  const taxed = regime === 'ordinary' ? BigInt(purchaseMinor) + net : regime === 'margin' ? net : 0n;
  return times(taxed, percentAsFraction(ratePct));
}
