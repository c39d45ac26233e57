import type { TuningPass } from '#instrument';
import { monthsAfter } from '../shop/due.ts';
import type { CardOf, ShopCard, ShopCardDraft } from '../shop/records.ts';
import type { CareOf } from './records.ts';
import type { WearRow } from './wear.ts';

type Plan = Pick<CareOf<'plan'>, 'visitsFirstYear' | 'visitsLater'>;

/** What the visits are counted from. */
export interface VisitStart {
  readonly plan: Plan;
  /** When the strings were put on; null where nobody said. */
  readonly strungOn: string | null;
  readonly lastTunedOn: string | null;
  readonly today: string;
}

const MONTHS = 12;

/** The day the piano was tuned last, by its passes: the latest that left a pitch. */
export function lastTunedOn(passes: readonly Pick<TuningPass, 'day' | 'leftCt'>[]): string | null {
  return passes.reduce<string | null>((last, { day, leftCt }) => (leftCt === null || (last !== null && day <= last) ? last : day), null);
}

/** Months from a visit to the next: closer within a year of the stringing. */
function monthsFrom(day: string, { plan, strungOn }: VisitStart): number {
  const isNew = strungOn !== null && day < monthsAfter(strungOn, MONTHS);
  return MONTHS / (isNew ? plan.visitsFirstYear : plan.visitsLater);
}

/**
 * The next days a tuning is due: from the last tuning, else the stringing, else today, by so many visits in the first year after the
 * stringing and so many later. What is overdue stands first, on the day it fell due. @source PRACTICE
 */
export function tuningVisitsOf(start: VisitStart, count: number): readonly string[] {
  const days: string[] = [];
  let day = [start.lastTunedOn, start.strungOn].filter((one) => one !== null).toSorted().at(-1) ?? start.today;
  while (days.length < count) {
    day = monthsAfter(day, monthsFrom(day, start));
    days.push(day);
  }
  return days;
}

type Reminder = Extract<ShopCardDraft, { kind: 'reminder' }>;

/** Parts due within so many days are put into the calendar. */
const AHEAD_DAYS = 3 * 365;

/** Reminders for the calendar of the shop: the tunings, closer ones until a year after the stringing, and the first look at each worn part. */
export function careRemindersOf(start: VisitStart, wear: readonly WearRow[], pianoId: string, wordsOf: (row: WearRow) => string): readonly Reminder[] {
  const [first = start.today] = tuningVisitsOf(start, 1);
  const yearEnd = start.strungOn === null ? '' : monthsAfter(start.strungOn, MONTHS);
  const close = first < yearEnd ? [tuning(pianoId, first, MONTHS / start.plan.visitsFirstYear, yearEnd)] : [];
  const later = tuningVisitsOf(start, MONTHS + 1).find((day) => day > yearEnd) ?? first;
  const farthest = new Date(Date.parse(`${start.today}T00:00:00Z`) + AHEAD_DAYS * 86_400_000).toISOString().slice(0, 10);
  const looks = wear.flatMap((row): readonly Reminder[] => (row.dueFrom === undefined || row.dueFrom > farthest ? [] : [{ kind: 'reminder', pianoId, purpose: 'service', firstOn: row.dueFrom > start.today ? row.dueFrom : start.today, everyMonths: null, details: { words: wordsOf(row) } }]));
  return [...close, tuning(pianoId, later, MONTHS / start.plan.visitsLater, null), ...looks];
}

function tuning(pianoId: string, firstOn: string, everyMonths: number, until: string | null): Reminder {
  return { kind: 'reminder', pianoId, purpose: 'tuning', firstOn, everyMonths, until };
}

/** How a reminder stands in the calendar: not at all, as it is, or on other days by a card that is to be moved. */
export type CalendarStanding = { readonly how: 'missing' } | { readonly how: 'there' | 'differs'; readonly cardId: string };

/** Finds the active reminder of this piano that says the same: a tuning by how often it comes, a look by its words. */
export function standingIn(cards: readonly ShopCard[], { pianoId, purpose, firstOn, everyMonths, until, details }: Reminder): CalendarStanding {
  const own = cards.filter((card): card is CardOf<'reminder'> => card.kind === 'reminder' && card.status === 'active' && card.pianoId === pianoId && card.purpose === purpose);
  const card = own.find((one) => (everyMonths == null ? one.everyMonths === null && one.details?.words === details?.words : one.everyMonths === everyMonths));
  if (card === undefined) return { how: 'missing' };
  return { how: everyMonths == null || (card.firstOn === firstOn && card.until === (until ?? null)) ? 'there' : 'differs', cardId: card.id };
}
