import { runOperation } from '#operation';
import { sourceOf } from '#sources';
import { describe, expect, it } from 'vitest';
import { marginVatOperation, publishedMoneyFigures, stagePaymentsOperation, threePointHoursOperation } from './index.ts';

describe('money against figures worked out elsewhere', () => {
  it.each(publishedMoneyFigures.map((figure) => [`${sourceOf(figure.source).title}, ${figure.place}: ${figure.what} for ${figure.given} is ${String(figure.expected)}`, figure] as const))('%s', (_, { found, expected, tolerance }) => {
    expect(Math.abs(found() - expected)).toBeLessThanOrEqual(tolerance);
  });
});

describe('what the operations refuse', () => {
  it('an unknown currency, by name', () => {
    expect(runOperation(marginVatOperation, { purchaseMinor: 1, saleMinor: 2, ratePct: 20, currency: 'XXX', rounding: 'down' })).toMatchObject({ ok: false, issues: [{ code: 'choice', path: 'currency', given: 'XXX' }] });
  });

  it('shares that are all nought', () => {
    expect(runOperation(stagePaymentsOperation, { totalMinor: 5, shares: [0, 0] })).toMatchObject({ ok: false, issues: [{ code: 'range', path: 'shares' }] });
    expect(runOperation(stagePaymentsOperation, { totalMinor: 100, shares: [1, 1, 1] })).toEqual({ ok: true, value: { amountsMinor: [34, 33, 33] } });
  });

  it('hours below nought and out of order', () => {
    expect(runOperation(threePointHoursOperation, { tasks: [{ low: -1, likely: 2, high: 3 }] })).toMatchObject({ ok: false, issues: [{ path: 'tasks[0].low', given: -1 }] });
    expect(runOperation(threePointHoursOperation, { tasks: [{ low: 3, likely: 2, high: 5 }, { low: 1, likely: 2, high: 1 }] })).toMatchObject({ ok: false, issues: [{ code: 'order', path: 'tasks[0].likely' }, { code: 'order', path: 'tasks[1].high' }] });
  });
});
