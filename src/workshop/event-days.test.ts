import { describe, expect, it } from 'vitest';
import { type EventMark, eventDaysOf } from './event-days.ts';

const mark = (seq: number, at: string, entities: readonly string[] = ['reading'], opened: number | null = null): EventMark => ({ seq, at: new Date(at), entities, opened });

describe('days of a log', () => {
  it('hold their events by kind, the newest day first', () => {
    const marks = [mark(1, '2031-05-05T09:00:00Z', ['instrument']), mark(2, '2031-05-05T10:00:00Z'), mark(3, '2031-05-05T11:00:00Z', ['work', 'reading']), mark(4, '2031-05-07T09:00:00Z')];
    expect(eventDaysOf(marks, 'UTC')).toEqual([
      { cycle: 1, day: '2031-05-07', first: 4, last: 4, what: { reading: 1 } },
      { cycle: 1, day: '2031-05-05', first: 1, last: 3, what: { instrument: 1, reading: 2, work: 1 } },
    ]);
  });

  it('are told by the clock of the place', () => {
    const late = [mark(1, '2031-05-05T23:30:00Z')];
    expect(['UTC', 'Europe/Berlin', 'America/Los_Angeles'].map((zone) => eventDaysOf(late, zone)[0]?.day)).toEqual(['2031-05-05', '2031-05-06', '2031-05-05']);
  });

  it('stand twice where a stay was opened on them', () => {
    const marks = [mark(1, '2031-05-05T09:00:00Z', ['instrument']), mark(2, '2031-05-05T10:00:00Z', ['instrument', 'cycle'], 2), mark(3, '2031-05-05T11:00:00Z')];
    expect(eventDaysOf(marks, 'UTC').map(({ cycle, day, first, last }) => [cycle, day, first, last])).toEqual([[2, '2031-05-05', 2, 3], [1, '2031-05-05', 1, 1]]);
    expect(eventDaysOf(marks, 'UTC')[0]?.what).toEqual({ instrument: 1, reading: 1 });
  });

  it('refuse a time zone that is none', () => {
    expect(() => eventDaysOf([], 'Nowhere/Land')).toThrow(RangeError);
  });
});
