import { type CardOf, type Estimate, type LabourLine, hoursOfEntry } from '#workshop';
import { pertMeanOf } from './hours/beta-pert.ts';

type Entry = Pick<CardOf<'hours'>, 'cycle' | 'line' | 'jobs' | 'hours' | 'startedAt' | 'stoppedAt'>;

/** One line of work with the hours that went into it. */
export interface BookedLine {
  readonly line: LabourLine;
  /** Mean of its three points; h. */
  readonly expectedH: number;
  /** Time noted for it; h. */
  readonly bookedH: number;
}

/** What the work of a stay took against what it was reckoned to take. */
export interface BookedHours {
  readonly lines: readonly BookedLine[];
  /** Time noted for no line of the estimate; h. */
  readonly otherH: number;
  readonly totalH: number;
  /** Expected and noted hours of the lines that were begun; h. */
  readonly begun: { readonly expectedH: number; readonly bookedH: number };
}

/** Lays the hours noted for a stay over the lines of its estimate. A clock that runs counts once it is stopped. @source OWN */
export function bookedHoursOf(estimate: Pick<Estimate, 'lines'> | null, cycle: number, entries: readonly Entry[]): BookedHours {
  const own = entries.filter((entry) => entry.cycle === cycle).map((entry) => ({ line: entry.line, hours: hoursOfEntry(entry) ?? 0 }));
  const sum = (some: readonly { readonly hours: number }[]): number => some.reduce((total, { hours }) => total + hours, 0);
  const labour = (estimate?.lines ?? []).filter((line) => line.kind === 'labour');
  const lines = labour.map((line) => ({ line, expectedH: pertMeanOf(line), bookedH: sum(own.filter((entry) => entry.line === line.id)) }));
  const begun = lines.filter(({ bookedH }) => bookedH > 0);
  const known = new Set(labour.map(({ id }) => id));
  return {
    lines,
    otherH: sum(own.filter(({ line }) => line === null || !known.has(line))),
    totalH: sum(own),
    begun: { expectedH: begun.reduce((total, { expectedH }) => total + expectedH, 0), bookedH: begun.reduce((total, { bookedH }) => total + bookedH, 0) },
  };
}

/** The estimate with the hours noted for a line kept as what it took: what the shop learns from. Hours to the hundredth. */
export function withActualHours(estimate: Estimate, lineId: string, bookedH: number): Estimate {
  return { ...estimate, lines: estimate.lines.map((line) => (line.kind === 'labour' && line.id === lineId ? { ...line, actualH: Math.round(bookedH * 100) / 100 } : line)) };
}
