import { describe, expect, it } from 'vitest';
import { airHoursOf, minuteOf } from './hours.ts';
import { airOutlookOf } from './outlook.ts';
import { type CareCard, careCardSchema } from './records.ts';
import { seasonInputOf } from './season-input.ts';
import { usualPlan } from './usual.ts';
import { careRemindersOf, lastTunedOn, standingIn, tuningVisitsOf } from './visits.ts';
import { wearOf } from './wear.ts';

const start = { plan: usualPlan, strungOn: '2026-03-31', lastTunedOn: '2026-05-31', today: '2026-06-10' };

describe('visits', () => {
  it('come four times in the first year after stringing and twice a year later, by hand', () => {
    expect(tuningVisitsOf(start, 5)).toEqual(['2026-08-31', '2026-11-30', '2027-02-28', '2027-05-28', '2027-11-28']);
  });

  it('begin today where nothing is known, and stay on their day where they are overdue', () => {
    expect(tuningVisitsOf({ ...start, strungOn: null, lastTunedOn: null }, 1)).toEqual(['2026-12-10']);
    expect(tuningVisitsOf({ ...start, strungOn: null, lastTunedOn: '2025-01-01' }, 1)).toEqual(['2025-07-01']);
  });

  it('count from the latest pass that left a pitch', () => {
    expect(lastTunedOn([{ day: '2026-01-02', leftCt: 0 }, { day: '2026-02-02', leftCt: null }])).toBe('2026-01-02');
    expect(lastTunedOn([])).toBeNull();
  });

  it('become reminders of the calendar, once', () => {
    const wear = wearOf({ ...usualPlan, hoursPerWeek: 14, lives: usualPlan.lives.map((life) => (life.by === 'hours' ? { ...life, since: '2026-03-31' } : life)) }, '2026-03-31', '2026-06-10');
    const reminders = careRemindersOf(start, wear, 'p', ({ life }) => life.part);
    expect(reminders.map(({ purpose, firstOn, everyMonths, until }) => [purpose, firstOn, everyMonths, until])).toEqual([['tuning', '2026-08-31', 3, '2027-03-31'], ['tuning', '2027-05-28', 6, null], ['service', '2026-08-28', null, undefined], ['service', '2028-12-25', null, undefined]]);
    const kept = reminders.map((one) => ({ ...one, status: 'active' as const, until: one.until ?? null, person: null, id: 'r', workshopId: 'w', at: '', changedAt: '', sequence: 0, details: { words: one.details?.words ?? '' } }));
    expect(reminders.map((one) => standingIn(kept as never, one).how)).toEqual(['there', 'there', 'there', 'there']);
    expect(standingIn([], reminders[0] as never)).toEqual({ how: 'missing' });
    expect(standingIn(kept as never, { ...reminders[0], firstOn: '2026-09-30' } as never)).toEqual({ how: 'differs', cardId: 'r' });
  });
});

it('tells no wear of a part nobody knows the age of, nor of one that is still to come', () => {
  expect(wearOf(usualPlan, null, '2026-06-10')).toEqual([]);
  expect(wearOf(usualPlan, '2026-03-31', '2026-06-10').map(({ life }) => life.part)).toEqual(['trebleStrings', 'bassStrings']);
  expect(wearOf(usualPlan, '2027-01-01', '2026-06-10')).toEqual([]);
});

const hours = airHoursOf(Array.from({ length: 48 }, (_, hour) => ({ minute: minuteOf('2026-01-01T00:00') + hour * 60, temperatureC: hour < 24 ? 20 : null, humidityPct: hour < 40 ? 50 : 30 })));

it('tells a log at a glance', () => {
  expect(airOutlookOf(hours, usualPlan)).toMatchObject({ humidity: { least: 30, most: 50 }, temperature: { least: 20, most: 20 }, watch: { hours: 48, dryHours: 8, fastHours: 8 } });
  expect(airOutlookOf(airHoursOf([]), usualPlan)).toBeUndefined();
});

describe('figures with the season', () => {
  const air = (at: string, pitchCt: number): CareCard => careCardSchema.parse({ kind: 'air', id: at, madeAt: at, at, temperatureC: null, humidityPct: 50, pitchCt, bearingDeg: null, moisturePct: null, remark: '' });
  const pass = (day: string, foundCt: number, leftCt: number | null) => ({ id: day, at: day, cycle: 1, day, time: null, stretch: 'whole' as const, foundCt, leftCt, temperatureC: null, humidityPct: null, remark: '' });

  it('are changes since the tuning before, and those outside the log are counted', () => {
    const { input, outside } = seasonInputOf(hours, [air('2026-01-02T09:00', 1.5), air('2026-02-02T09:00', 4)], [pass('2026-01-01', -8, 0.5)], 'pitchCt');
    expect(input.observed).toEqual([{ dayCount: 20455.5, value: 1, sinceDayCount: 20454.5 }]);
    expect(outside).toBe(1);
    expect(input.air.map(({ dayCount }) => dayCount)).toEqual([20454.5, 20455.5]);
  });
});
