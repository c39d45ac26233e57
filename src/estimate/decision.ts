import { runOperation } from '#operation';
import { type Result, all, andThen, map } from '#result';
import type { Alternative, Estimate, TaxRegime } from '#workshop';
import { type SaleTax, breakEvenSaleOf, taxOfSale } from './decide/break-even.ts';
import type { CashFlow } from './decide/cash-flow.ts';
import { type EstimateFigures, estimateFiguresOf } from './figures.ts';
import { restoreDecisionOperation } from './operations/restore-decision.ts';

/** How a sale is taxed under a regime; an export is taken as free of tax, as long as its evidence holds. @source VATMARG07000 */
const saleTax: Readonly<Record<TaxRegime, SaleTax>> = { ordinary: 'ordinary', margin: 'margin', export: 'none', none: 'none' };

/** What the lowest sale of a way is asked with. @source VATMARG02300 */
export const breakEvenAsked = (estimate: Estimate, { months }: Pick<Alternative, 'months'>, cashFlows: readonly CashFlow[]) => ({ ...saleOf(estimate), cashFlows, saleMonth: months, annualRatePct: estimate.annualRatePct });

/** One alternative for the decision. */
export interface DecidedWay {
  readonly alternative: Alternative;
  readonly figures: EstimateFigures;
  /** What is paid out, and with what comes in at the end. */
  readonly costs: readonly CashFlow[];
  readonly flows: readonly CashFlow[];
  readonly npvMinor: number;
  readonly profitMinor: number;
  readonly perBenchHourMinor: number | null;
  readonly paybackMonth: number | null;
  readonly irrPct: number | null;
  /** Lowest sale price, tax included, that breaks even; null where nothing is to be sold or no price would do. */
  readonly breakEvenMinor: number | null;
}

export interface Decision {
  readonly ways: readonly DecidedWay[];
  /** Ids of the alternatives, the best present value first. */
  readonly ranking: readonly string[];
  readonly irrDisagrees: boolean;
}

/**
 * The alternatives of an estimate beside each other as money in and out. Paid at once: the purchase, parts and work of others;
 * halfway: wages, overhead; at the end comes the sale less its tax, or the price before tax. One’s own hours are no payment: the profit per bench hour is what they earn.
 */
export function decisionOf(estimate: Estimate): Result<Decision> {
  const { alternatives, annualRatePct } = estimate;
  return andThen(all(alternatives.map((way) => estimateFiguresOf(estimate, way))), (figures) => {
    const ways = figures.flatMap((each, index) => {
      const alternative = alternatives[index];
      return alternative === undefined ? [] : [{ alternative, figures: each, costs: costFlowsOf(estimate, alternative, each), income: incomeOf(estimate, alternative, each) }];
    });
    const options = ways.map(({ alternative, figures: { expectedH }, costs, income }) => ({ name: alternative.id, benchHours: expectedH, cashFlows: [...costs, income] }));
    return map(runOperation(restoreDecisionOperation, { options, annualRatePct }), (worked) => ({
      ranking: worked.ranking,
      irrDisagrees: worked.irrDisagrees,
      ways: ways.map(({ alternative, figures: each, costs, income }, index) => ({
        alternative, figures: each, costs, flows: [...costs, income],
        npvMinor: worked.npvMinor[index] ?? 0, profitMinor: worked.profitMinor[index] ?? 0, perBenchHourMinor: worked.perBenchHourMinor[index] ?? null,
        paybackMonth: worked.paybackMonth[index] ?? null, irrPct: worked.irrPct[index] ?? null,
        breakEvenMinor: estimate.owner === 'shop' ? breakEvenSaleOf(breakEvenAsked(estimate, alternative, costs)) : null,
      })),
    }));
  });
}

function saleOf({ tax, purchaseMinor, rounding }: Estimate) {
  return { tax: saleTax[tax.regime], ratePct: tax.ratePct, purchaseMinor: purchaseMinor ?? 0, rounding };
}

function costFlowsOf({ owner, purchaseMinor, wageMinor }: Estimate, { months }: Alternative, { partsMinor, outsideMinor, overheadMinor, expectedH }: EstimateFigures): readonly CashFlow[] {
  const flows = [
    { month: 0, amountMinor: -(owner === 'shop' ? (purchaseMinor ?? 0) : 0) - partsMinor - outsideMinor },
    { month: Math.floor(months / 2), amountMinor: -overheadMinor - Math.round(wageMinor * expectedH) },
  ];
  const [first] = flows;
  const paid = flows.filter(({ amountMinor }) => amountMinor !== 0).map(({ month, amountMinor }) => ({ month, amountMinor }));
  return paid.length > 0 || first === undefined ? paid : [{ month: 0, amountMinor: 0 }];
}

function incomeOf(estimate: Estimate, { saleMinor, months }: Alternative, { totalMinor, taxMinor }: EstimateFigures): CashFlow {
  const amountMinor = saleMinor === null ? totalMinor - taxMinor : saleMinor - taxOfSale(saleMinor, saleOf(estimate));
  return { month: months, amountMinor };
}
