import { type CardOf, shopCardSchema } from '#workshop';
import { describe, expect, it } from 'vitest';
import { hoursFormOf, hoursOfForm, typedHours } from './hours-form.ts';

const known = { pianoId: 'p', today: '2031-05-01' };
const entry = shopCardSchema.parse({ kind: 'hours', id: 'a', workshopId: 'shop', at: '', changedAt: '', sequence: 0, pianoId: 'p', cycle: 1, on: '2031-05-01', jobs: ['j'], line: 'l', who: 'ada', startedAt: '2031-05-01T08:00:12.345Z', stoppedAt: '2031-05-01T10:30:45.678Z', details: { words: 'x' } }) as CardOf<'hours'>;
const given = { entry, cycle: 1, who: null, locale: 'en' };

describe('hours as typed', () => {
  it('are read as a figure or as hours and minutes', () => {
    expect([typedHours('2.5', 'en'), typedHours('2,5', 'de'), typedHours('2:30', 'en'), typedHours(' ', 'en')].map((read) => (read.ok ? read.value : 'no'))).toEqual([2.5, 2.5, 2.5, null]);
    expect([typedHours('2:75', 'en').ok, typedHours('soon', 'en').ok]).toEqual([false, false]);
  });

  it('negative, nought or none are refused under their field', () => {
    const refused = (hours: string) => { const stated = hoursOfForm({ ...hoursFormOf(undefined, known, 'en'), hours }, { ...given, entry: undefined }); return stated.ok ? [] : stated.issues.map(({ path }) => path); };
    expect([refused('-1'), refused('0'), refused(''), refused('1')]).toEqual([['hours'], ['hours'], ['hours'], []]);
  });

  it('leave an entry of the clock as it was where nothing was changed, to the millisecond', () => {
    const stated = hoursOfForm(hoursFormOf(entry, known, 'en'), given);
    expect(stated.ok && stated.value).toMatchObject({ startedAt: entry.startedAt, stoppedAt: entry.stoppedAt, hours: null, who: 'ada', jobs: ['j'], line: 'l', details: { words: 'x' } });
  });

  it('refuse a stop before the start', () => {
    const stated = hoursOfForm({ ...hoursFormOf(entry, known, 'en'), stoppedAt: '2031-04-30T10:00' }, given);
    expect(stated.ok ? [] : stated.issues).toMatchObject([{ code: 'order', path: 'stoppedAt' }]);
  });
});
