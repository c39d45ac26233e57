import type { CardOf } from './records.ts';

type Hours = CardOf<'hours'>;
/** What the length of an entry follows from. */
export type ClockedHours = Pick<Hours, 'hours' | 'startedAt' | 'stoppedAt'>;

const MS_PER_HOUR = 3_600_000;
/** Hours after which a clock that still runs is asked about: longer than a day at the bench. @source PRACTICE */
export const FORGOTTEN_AFTER_H = 10;

/** Hours of an entry: what was typed, else from start to stop; nothing while the clock runs. h. @source OWN */
export function hoursOfEntry({ hours, startedAt, stoppedAt }: ClockedHours): number | undefined {
  if (hours !== null) return hours;
  return startedAt === null || stoppedAt === null ? undefined : (Date.parse(stoppedAt) - Date.parse(startedAt)) / MS_PER_HOUR;
}

/** True while the clock of an entry runs. */
export function isRunning({ hours, startedAt, stoppedAt }: ClockedHours): boolean {
  return hours === null && startedAt !== null && stoppedAt === null;
}

/** True where a running clock has run so long that it may have been forgotten. It is told, never cut. */
export function mayBeForgotten(entry: ClockedHours, now: Date): boolean {
  return isRunning(entry) && now.getTime() - Date.parse(entry.startedAt ?? '') > FORGOTTEN_AFTER_H * MS_PER_HOUR;
}
