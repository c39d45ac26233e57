import { z } from 'zod';

/** One event as far as the days of a log are told from it. */
export interface EventMark {
  readonly seq: number;
  readonly at: Date;
  /** Kinds of what it changed. */
  readonly entities: readonly string[];
  /** The stay it opened, where it did and that stands. */
  readonly opened: number | null;
}

/** One day of a log within one stay: which events, and how many of them changed what. */
export const eventDaySchema = z.strictObject({
  cycle: z.number().int().min(1),
  day: z.string(),
  /** Numbers of its first and last event: those between are of this day too. */
  first: z.number().int(),
  last: z.number().int(),
  /** Events by kind of what they changed; one that changed two kinds counts at both. */
  what: z.record(z.string(), z.number().int()),
});
export type EventDay = z.output<typeof eventDaySchema>;

/** The name the opening of a stay has among what an event touches; it is a change of the instrument and told as such. */
const OPENING = 'cycle';

/**
 * Days of a log, the newest first, by the clock of a time zone. A day on which a stay was opened stands twice: before and after.
 * @param marks every event, oldest first
 * @param zone a name of the IANA time zone database, as `Europe/Berlin`
 * @throws RangeError for a time zone that is none
 */
export function eventDaysOf(marks: readonly EventMark[], zone: string): readonly EventDay[] {
  const print = new Intl.DateTimeFormat('sv-SE', { timeZone: zone, year: 'numeric', month: '2-digit', day: '2-digit' });
  const days: { cycle: number; day: string; first: number; last: number; what: Record<string, number> }[] = [];
  let cycle = 1;
  for (const { seq, at, entities, opened } of marks) {
    cycle = opened ?? cycle;
    const day = print.format(at);
    let open = days.at(-1);
    if (open?.day !== day || open.cycle !== cycle) days.push((open = { cycle, day, first: seq, last: seq, what: {} }));
    open.last = seq;
    for (const entity of entities) if (entity !== OPENING) open.what[entity] = (open.what[entity] ?? 0) + 1;
  }
  return days.toReversed();
}
