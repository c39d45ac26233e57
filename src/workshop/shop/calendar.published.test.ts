import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import { type CalendarEntry, calendarOf } from './calendar.ts';
import { monthsAfter, nextDueOf } from './due.ts';
import type { CardOf } from './records.ts';

const kept = { workshopId: 'shop', at: '2031-01-01T00:00:00Z', changedAt: '2031-01-02T03:04:05.678Z', sequence: 3 };
const visit: CardOf<'appointment'> = { ...kept, id: 'a1', kind: 'appointment', person: null, pianoId: null, purpose: 'trial', where: 'hall', startsAt: '2031-05-01T10:30:00+02:00', minutes: 90, status: 'planned', details: null };
const reminder: CardOf<'reminder'> = { ...kept, id: 'r1', kind: 'reminder', person: null, pianoId: null, purpose: 'tuning', firstOn: '2031-01-31', everyMonths: 1, until: null, status: 'active', details: null };
const entry = (card: CalendarEntry['card'], rest: Partial<CalendarEntry> = {}): CalendarEntry => ({ card, summary: 'Summary', description: '', location: '', standing: true, ...rest });

const eventsIn = (text: string): readonly InstanceType<typeof ICAL.Event>[] =>
  new ICAL.Component(ICAL.parse(text) as never).getAllSubcomponents('vevent').map((component) => new ICAL.Event(component));

/** Days of a reminder, as a foreign reader repeats it. */
function daysOf(card: CardOf<'reminder'>, count: number): readonly string[] {
  const [event] = eventsIn(calendarOf('Shop', [entry(card)]));
  const iterator = event?.iterator();
  return Array.from({ length: count }, () => String(iterator?.next()));
}

describe('the calendar feed read back by ical.js (RFC 5545)', () => {
  it('RFC 5545 3.3.11: text with commas, semicolons, backslashes, line ends and other scripts comes back as it was', () => {
    const text = String.raw`Viewing; hall, "small" \n back\slash` + '\nsecond line: Flügel ♯ 🎹, Überführung';
    const [event] = eventsIn(calendarOf('Shop', [entry(visit, { summary: text, description: text.repeat(5), location: text })]));
    expect([event?.summary, event?.description, event?.location]).toEqual([text, text.repeat(5), text]);
  });

  it('RFC 5545 3.1: no line is over 75 octets, every line ends in CRLF, and no character is parted', () => {
    const text = calendarOf('Shop', [entry(visit, { summary: '🎹ü,;'.repeat(60) })]);
    expect(text.endsWith('\r\n')).toBe(true);
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/u);
    const lines = text.split('\r\n');
    expect(Math.max(...lines.map((line) => Buffer.byteLength(line)))).toBeLessThanOrEqual(75);
    expect(lines.filter((line) => line.startsWith(' ')).length).toBeGreaterThan(5);
    expect(lines.every((line) => !/\p{Surrogate}/u.test(line))).toBe(true);
  });

  it('RFC 5545 3.6.1, 3.8.7: moments in UTC, a stable UID, the sequence, and DTSTAMP from the last change', () => {
    const text = calendarOf('Shop', [entry(visit)]);
    const [event] = eventsIn(text);
    expect(event?.startDate.toJSDate().toISOString()).toBe('2031-05-01T08:30:00.000Z');
    expect(event?.endDate.toJSDate().toISOString()).toBe('2031-05-01T10:00:00.000Z');
    expect([event?.uid, event?.sequence]).toEqual(['a1@wrestplank', 3]);
    expect(text).toContain('DTSTAMP:20310102T030405Z\r\n');
  });

  it('RFC 5545 3.8.1.11: what was called off, ended or withdrawn is told as cancelled under the same UID', () => {
    const statuses = eventsIn(calendarOf('Shop', [entry(visit), entry({ ...visit, status: 'cancelled' }), entry(visit, { standing: false }), entry({ ...reminder, status: 'ended' })]))
      .map((event) => [event.uid, event.component.getFirstPropertyValue('status')]);
    expect(statuses).toEqual([['a1@wrestplank', 'CONFIRMED'], ['a1@wrestplank', 'CANCELLED'], ['a1@wrestplank', 'CANCELLED'], ['r1@wrestplank', 'CANCELLED']]);
  });

  it('RFC 5545 3.3.10, 3.8.5.2: a reminder on the 31st falls on the last day of shorter months, as the book itself reckons', () => {
    expect(daysOf(reminder, 5)).toEqual(['2031-01-31', '2031-02-28', '2031-03-31', '2031-04-30', '2031-05-31']);
    expect(daysOf({ ...reminder, firstOn: '2031-08-30', everyMonths: 6 }, 3)).toEqual(['2031-08-30', '2032-02-29', '2032-08-30']);
    for (const everyMonths of [1, 3, 5, 12, 25]) {
      for (const firstOn of ['2031-01-31', '2030-11-30', '2028-02-29', '2031-10-29', '2031-05-05']) {
        const days = daysOf({ ...reminder, firstOn, everyMonths }, 9);
        expect(days).toEqual(days.map((_, step) => monthsAfter(firstOn, step * everyMonths)));
      }
    }
  });

  it('RFC 5545 3.3.10: a reminder ends with its last day', () => {
    const [event] = eventsIn(calendarOf('Shop', [entry({ ...reminder, firstOn: '2031-01-15', everyMonths: 6, until: '2032-01-15' })]));
    const iterator = event?.iterator();
    const days: string[] = [];
    for (let day = iterator?.next(); day !== undefined && days.length < 9; day = iterator?.next()) days.push(day.toString());
    expect(days).toEqual(['2031-01-15', '2031-07-15', '2032-01-15']);
  });
});

describe('when a reminder falls due', () => {
  it('is the first of its days not yet past, and none once it has ended', () => {
    expect(nextDueOf(reminder, '2030-12-01')).toBe('2031-01-31');
    expect(nextDueOf(reminder, '2031-02-01')).toBe('2031-02-28');
    expect(nextDueOf(reminder, '2031-03-01')).toBe('2031-03-31');
    expect(nextDueOf({ ...reminder, everyMonths: null }, '2035-01-01')).toBe('2031-01-31');
    expect(nextDueOf({ ...reminder, until: '2031-03-15' }, '2031-03-01')).toBeUndefined();
    expect(nextDueOf({ ...reminder, status: 'ended' }, '2031-01-01')).toBeUndefined();
  });

  it('agrees with walking through its days one by one', () => {
    for (const everyMonths of [1, 2, 7]) {
      for (let offset = 0; offset < 400; offset += 13) {
        const today = new Date(Date.UTC(2031, 0, 31 + offset)).toISOString().slice(0, 10);
        const walked = Array.from({ length: 60 }, (_, step) => monthsAfter('2031-01-31', step * everyMonths)).find((day) => day >= today);
        expect(nextDueOf({ ...reminder, everyMonths }, today)).toBe(walked);
      }
    }
  });
});
