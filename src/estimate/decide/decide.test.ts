import fc from 'fast-check';
import { irr, npv } from 'financial';
import { describe, expect, it } from 'vitest';
import { runOperation } from '#operation';
import { breakEvenSaleOperation, restoreDecisionOperation } from '../index.ts';
import { breakEvenSaleOf, taxOfSale } from './break-even.ts';
import { paybackMonthOf, presentValueOf, rateOfReturnOf, signChangesOf } from './cash-flow.ts';

const flows = (...amounts: readonly number[]) => amounts.map((amountMinor, year) => ({ month: 12 * year, amountMinor }));
const amounts = fc.array(fc.integer({ min: -1_000_000, max: 1_000_000 }), { minLength: 1, maxLength: 12 });

describe('present value and rate of return beside a general finance library', () => {
  it('agree on present value', () => {
    fc.assert(fc.property(amounts, fc.integer({ min: 0, max: 40 }), (list, rate) => {
      expect(presentValueOf(flows(...list), rate)).toBeCloseTo(npv(rate / 100, list), 4);
    }));
  });

  it.each([[[-150_000, 15_000, 25_000, 35_000, 45_000, 60_000]], [[-100, 0, 0, 74]], [[-100, 100, 0, 7]], [[-850_000, 1_000_000]], [[-40_000, 5000, 8000, 12_000, 30_000]]])('agree on the rate of %j', (list) => {
    expect(rateOfReturnOf(flows(...list))).toBeCloseTo(100 * irr(list), 6);
  });

  it('make the present value nought at the rate of return', () => {
    fc.assert(fc.property(fc.integer({ min: 1, max: 1e6 }), fc.array(fc.integer({ min: 1, max: 1e6 }), { minLength: 1, maxLength: 8 }), (out, list) => {
      const all = flows(-out, ...list);
      const rate = rateOfReturnOf(all);
      if (rate !== null) expect(Math.abs(presentValueOf(all, rate))).toBeLessThan(1e-6 * out);
    }));
  });

  it('give no rate where signs change twice: −100, 230, −132 has two, 10 % and 20 %', () => {
    const two = flows(-100_000, 230_000, -132_000);
    expect(signChangesOf(two)).toBe(2);
    expect(rateOfReturnOf(two)).toBeNull();
    for (const rate of [10, 20]) expect(presentValueOf(two, rate)).toBeCloseTo(0, 6);
    expect(rateOfReturnOf(flows(5, 6))).toBeNull();
  });
});

describe('payback', () => {
  it('is the month from which on the money stays back', () => {
    expect(paybackMonthOf(flows(-100, 50, 60))).toBe(24);
    expect(paybackMonthOf([{ month: 0, amountMinor: 30 }, { month: 1, amountMinor: -100 }, { month: 5, amountMinor: 80 }])).toBe(5);
    expect(paybackMonthOf(flows(-100, 50))).toBeNull();
    expect(paybackMonthOf([{ month: 3, amountMinor: 50 }, { month: 3, amountMinor: -50 }])).toBe(3);
  });
});

describe('the decision', () => {
  const run = (input: object) => runOperation(restoreDecisionOperation, input);

  it('shows why a rate of return misleads: the quick small gain has the higher rate and leaves less', () => {
    const result = run({ annualRatePct: 10, options: [
      { name: 'restore', cashFlows: [{ month: 0, amountMinor: -1000 }, { month: 12, amountMinor: 3000 }], benchHours: 10 },
      { name: 'as is', cashFlows: [{ month: 0, amountMinor: -100 }, { month: 12, amountMinor: 400 }], benchHours: 1 },
    ] });
    expect(result).toMatchObject({ ok: true, value: { npvMinor: [1727, 264], profitMinor: [2000, 300], perBenchHourMinor: [200, 300], paybackMonth: [12, 12], signChanges: [1, 1], ranking: ['restore', 'as is'], irrDisagrees: true } });
    if (result.ok) expect((result.value as { irrPct: readonly number[] }).irrPct.map((rate) => Math.round(rate))).toEqual([200, 300]);
  });

  it('has no profit by the hour where there is no hour', () => {
    expect(run({ annualRatePct: 0, options: [{ name: 'decline', cashFlows: [{ month: 0, amountMinor: 0 }], benchHours: 0 }] })).toMatchObject({ ok: true, value: { npvMinor: [0], perBenchHourMinor: [null], irrPct: [null] } });
  });

  it('refuses what an amount cannot hold', () => {
    expect(run({ annualRatePct: -50, options: [{ name: 'x', cashFlows: [{ month: 1200, amountMinor: Number.MAX_SAFE_INTEGER }], benchHours: 1 }] })).toMatchObject({ ok: false, issues: [{ path: 'options[0]' }] });
  });
});

describe('the sale that breaks even', () => {
  const question = { cashFlows: [{ month: 0, amountMinor: -850_000 }, { month: 6, amountMinor: -700_000 }], saleMonth: 14, annualRatePct: 10, ratePct: 20, purchaseMinor: 850_000, rounding: 'half-up' } as const;

  it.each(['margin', 'ordinary', 'none'] as const)('is the lowest price with %s tax, and near its closed form', (tax) => {
    const sale = breakEvenSaleOf({ ...question, tax }) ?? Number.NaN;
    const left = (price: number) => presentValueOf([...question.cashFlows, { month: 14, amountMinor: price - taxOfSale(price, { ...question, tax }) }], 10);
    expect(left(sale)).toBeGreaterThanOrEqual(0);
    expect(left(sale - 1)).toBeLessThan(0);
    const needed = 850_000 * 1.1 ** (14 / 12) + 700_000 * 1.1 ** (8 / 12);
    const closed = { margin: needed + (needed - 850_000) / 5, ordinary: needed * 1.2, none: needed }[tax];
    expect(Math.abs(sale - closed)).toBeLessThanOrEqual(2);
  });

  it('is nought where nothing is to be made up for, and refused beyond what an amount holds', () => {
    expect(breakEvenSaleOf({ ...question, tax: 'none', cashFlows: [{ month: 0, amountMinor: 5 }] })).toBe(0);
    expect(runOperation(breakEvenSaleOperation, { ...question, currency: 'GBP', tax: 'none', cashFlows: [{ month: 0, amountMinor: -Number.MAX_SAFE_INTEGER }] })).toMatchObject({ ok: false, issues: [{ code: 'unreachable' }] });
  });
});
