import { describe, expect, it } from 'vitest';
import { type Estimate, estimateSchema } from '#workshop';
import { bookedHoursOf, learntHoursOf, withActualHours } from './index.ts';

const line = (id: string, operation = 'stringing') => ({ kind: 'labour' as const, id, words: id, operation, low: 6, likely: 9, high: 18, ways: ['w'] });
const estimate: Estimate = estimateSchema.parse({
  currency: 'EUR', rateMinor: 6000, contingency: { kind: 'none' }, pricing: { kind: 'markup', pct: 0 }, tax: { regime: 'none', ratePct: 0 },
  alternatives: [{ id: 'w', words: 'Way' }], lines: [line('a'), line('b'), { kind: 'outside', id: 'c', words: 'c', priceMinor: 1, ways: ['w'] }],
});
const entry = (hours: number | null, lineId: string | null, cycle = 1) => ({ cycle, line: lineId, jobs: [], hours, startedAt: null, stoppedAt: null });

describe('hours noted against the estimate', () => {
  it('are summed by line; those of no line, and of no line of work, stand apart; other stays are left out', () => {
    const booked = bookedHoursOf(estimate, 1, [entry(4, 'a'), entry(2.5, 'a'), entry(1, null), entry(3, 'c'), entry(7, 'b', 2)]);
    expect(booked.lines.map(({ line: { id }, bookedH, expectedH }) => [id, bookedH, expectedH])).toEqual([['a', 6.5, 10], ['b', 0, 10]]);
    expect([booked.otherH, booked.totalH, booked.begun]).toEqual([4, 10.5, { expectedH: 10, bookedH: 6.5 }]);
  });

  it('count without an estimate too, and a clock that runs counts nothing yet', () => {
    expect(bookedHoursOf(null, 1, [entry(2, null), { ...entry(null, null), startedAt: '2031-01-01T08:00:00Z' }])).toMatchObject({ otherH: 2, totalH: 2 });
  });

  it('teach once they are kept as what the line took: three finished jobs are the hours that are suggested', () => {
    const done = [5, 10, 20].map((hours) => withActualHours(estimate, 'a', bookedHoursOf(estimate, 1, [entry(hours, 'a')]).lines[0]?.bookedH ?? 0));
    expect(learntHoursOf(done)[0]?.hours.likely).toBeCloseTo(10, 12);
    expect(done[0]?.lines[1]).toEqual(estimate.lines[1]);
  });
});
