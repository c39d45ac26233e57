import { monthsAfter } from './due.ts';
import type { CardOf, ShopCard } from './records.ts';

type Scheduled = CardOf<'appointment'> | CardOf<'reminder'>;

/** A card of the calendar: what it says in words, and whether it still stands. */
export interface CalendarEntry {
  readonly card: Scheduled;
  readonly summary: string;
  readonly description: string;
  readonly location: string;
  /** False once the card was withdrawn: the calendar that has it is told so. */
  readonly standing: boolean;
}

/** True for a card that stands in the calendar. */
export function isScheduled(card: ShopCard): card is Scheduled {
  return card.kind === 'appointment' || card.kind === 'reminder';
}

/**
 * The shop's appointments and reminders as one iCalendar object.
 *
 * UID stays for the life of a card, SEQUENCE grows with each change, DTSTAMP is when it was last changed, in UTC.
 * What was called off or withdrawn stays in the feed as `CANCELLED`, so that a calendar that took it over drops it.
 * A visit stands at its moment in UTC; a reminder on its day without a clock, repeated by the month.
 * @source RFC-5545, sections 3.1, 3.3.10, 3.3.11, 3.6.1, 3.8.4.7, 3.8.7
 */
export function calendarOf(name: string, entries: readonly CalendarEntry[]): string {
  return [
    'BEGIN:VCALENDAR', 'VERSION:2.0', 'PRODID:-//Wrestplank//Bench book//EN', 'CALSCALE:GREGORIAN', 'METHOD:PUBLISH',
    `X-WR-CALNAME:${textOf(name)}`,
    ...entries.flatMap(eventLines),
    'END:VCALENDAR',
  ].map((line) => `${folded(line)}\r\n`).join('');
}

function eventLines({ card, summary, description, location, standing }: CalendarEntry): readonly string[] {
  const optional = (property: string, text: string): readonly string[] => (text === '' ? [] : [`${property}:${textOf(text)}`]);
  return [
    'BEGIN:VEVENT',
    `UID:${card.id}@wrestplank`,
    `DTSTAMP:${utcOf(card.changedAt)}`,
    `SEQUENCE:${String(card.sequence)}`,
    ...(card.kind === 'appointment' ? visitLines(card) : reminderLines(card)),
    `STATUS:${standing && !isOff(card) ? 'CONFIRMED' : 'CANCELLED'}`,
    `SUMMARY:${textOf(summary)}`,
    ...optional('DESCRIPTION', description),
    ...optional('LOCATION', location),
    'END:VEVENT',
  ];
}

const isOff = (card: Scheduled): boolean => card.status === 'cancelled' || card.status === 'ended';

function visitLines({ startsAt, minutes }: CardOf<'appointment'>): readonly string[] {
  const end = new Date(Date.parse(startsAt) + minutes * 60_000).toISOString();
  return [`DTSTART:${utcOf(startsAt)}`, `DTEND:${utcOf(end)}`];
}

function reminderLines({ firstOn, everyMonths, until }: CardOf<'reminder'>): readonly string[] {
  const start = `DTSTART;VALUE=DATE:${dateOf(firstOn)}`;
  if (everyMonths === null) return [start, 'TRANSP:TRANSPARENT'];
  const isLast = firstOn.endsWith('-31');
  const parts = ['FREQ=MONTHLY', `INTERVAL=${String(everyMonths)}`, ...(until === null ? [] : [`UNTIL=${dateOf(until)}`]), ...(isLast ? ['BYMONTHDAY=-1'] : [])];
  const left = isLast ? [] : februaries(firstOn, everyMonths, until);
  return [start, `RRULE:${parts.join(';')}`, ...(left.length === 0 ? [] : [`RDATE;VALUE=DATE:${left.map(dateOf).join(',')}`]), 'TRANSP:TRANSPARENT'];
}

/** How far ahead the Februaries of a reminder on the 29th or 30th are written out. */
const YEARS_WRITTEN_OUT = 20;

/** A rule skips a month that lacks its day, and no rule all readers understand says "or its last": those Februaries are written out. */
function februaries(firstOn: string, everyMonths: number, until: string | null): readonly string[] {
  const steps = Math.floor((YEARS_WRITTEN_OUT * 12) / everyMonths);
  return Array.from({ length: steps }, (_, step) => monthsAfter(firstOn, (step + 1) * everyMonths))
    .filter((day) => day.slice(8) !== firstOn.slice(8) && (until === null || day <= until));
}

const dateOf = (day: string): string => day.replaceAll('-', '');

/** `20260309T080000Z` of an ISO 8601 moment. */
function utcOf(moment: string): string {
  return `${new Date(moment).toISOString().slice(0, 19).replaceAll(/[-:]/gu, '')}Z`;
}

/** TEXT of RFC 5545: backslash, semicolon, comma and line end are escaped, other controls have no place in it. */
function textOf(text: string): string {
  return text.replaceAll(/[\\;,]/gu, (sign) => `\\${sign}`).replaceAll(/\r\n?|\n/gu, String.raw`\n`).replaceAll(/[\p{Cc}]/gu, ' ');
}

const MOST_OCTETS = 75;

/** A content line folded so that no line is over 75 octets and no character is parted. */
function folded(line: string): string {
  const lines: string[] = [];
  let open = '';
  let octets = 0;
  for (const sign of line) {
    const size = octetsOf(sign);
    if (octets + size > MOST_OCTETS) {
      lines.push(open);
      open = ' ';
      octets = 1;
    }
    open += sign;
    octets += size;
  }
  return [...lines, open].join('\r\n');
}

/** Octets of one character in UTF-8. @source RFC-3629, section 3 */
function octetsOf(sign: string): number {
  const code = sign.codePointAt(0) ?? 0;
  return code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x1_0000 ? 3 : 4;
}
