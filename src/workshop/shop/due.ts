import type { CardOf } from './records.ts';

/** What decides when a reminder falls due. */
export type Recurrence = Pick<CardOf<'reminder'>, 'firstOn' | 'everyMonths' | 'until' | 'status'>;

/**
 * The day `months` after a day, `YYYY-MM-DD`; where that month is too short, its last day.
 * The day of the month is always taken from the first day, so that 31 January goes by 28 February to 31 March.
 */
export function monthsAfter(day: string, months: number): string {
  const [year = 0, month = 1, dayOfMonth = 1] = day.split('-').map(Number);
  const first = new Date(Date.UTC(year, month - 1 + months, 1));
  const last = new Date(Date.UTC(first.getUTCFullYear(), first.getUTCMonth() + 1, 0)).getUTCDate();
  return new Date(Date.UTC(first.getUTCFullYear(), first.getUTCMonth(), Math.min(dayOfMonth, last))).toISOString().slice(0, 10);
}

/** The first day on or after `today` a reminder falls due; one that comes once stays due until it is ended. Nothing once it has ended. */
export function nextDueOf({ firstOn, everyMonths, until, status }: Recurrence, today: string): string | undefined {
  if (status === 'ended') return undefined;
  if (everyMonths === null || firstOn >= today) return firstOn;
  const apart = (Number(today.slice(0, 4)) - Number(firstOn.slice(0, 4))) * 12 + Number(today.slice(5, 7)) - Number(firstOn.slice(5, 7));
  const steps = Math.floor(apart / everyMonths);
  const due = [steps, steps + 1].map((step) => monthsAfter(firstOn, step * everyMonths)).find((day) => day >= today);
  return due === undefined || (until !== null && due > until) ? undefined : due;
}
