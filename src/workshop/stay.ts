import type { ActionTerms, Observation, ScaleTerms, TouchIntent, TuningPass, TuningTerms, WeighingSession } from '#instrument';
import type { Estimate } from './estimate.ts';
import type { PaperRecord } from './papers/records.ts';
import type { Quote } from './quote.ts';
import type { WorkItem } from './records.ts';
import type { RoomRecord } from './room/record.ts';
import type { Answer } from './routes.ts';

/** What is kept of one stay of a piano in the shop. */
export interface Stay {
  readonly cycle: number;
  /** Oldest first. */
  readonly sessions: readonly WeighingSession[];
  readonly intent: TouchIntent | null;
  /** What is stated and asked of strings and bearing. */
  readonly scale: ScaleTerms | null;
  /** What is stated and asked of the action. */
  readonly action: ActionTerms | null;
  /** What is stated and asked of the tuning. */
  readonly tuning: TuningTerms | null;
  /** Passes over the strings. */
  readonly passes: readonly TuningPass[];
  /** What was seen by eye. */
  readonly observations: readonly Observation[];
  readonly work: readonly WorkItem[];
  /** What the job is reckoned to take and cost. */
  readonly estimate: Estimate | null;
  readonly quotes: readonly Quote[];
  /** Rooms it stands in or may stand in. */
  readonly rooms: readonly RoomRecord[];
  /** What papers hang on; of the instrument, in every stay alike. */
  readonly papers: readonly PaperRecord[];
}

/** The part of a piano's file that belongs to one of its stays; `null` where nothing was stated. Readings are asked for by themselves. */
export function stayOf({ sessions, intents, scales, actions, tunings, passes, observations, work, estimates, quotes, rooms, papers }: Answer<'getPiano'>, cycle: number): Stay {
  const of = <T extends { readonly cycle: number }>(all: readonly T[]): readonly T[] => all.filter((one) => one.cycle === cycle);
  const place = String(cycle);
  return {
    cycle,
    sessions: of(sessions).toSorted((a, b) => a.startedAt.localeCompare(b.startedAt)),
    intent: intents[place] ?? null, scale: scales[place] ?? null, action: actions[place] ?? null, tuning: tunings[place] ?? null,
    passes: of(passes),
    observations: of(observations), work: of(work),
    estimate: estimates[place] ?? null, quotes: of(quotes), rooms: of(rooms), papers,
  };
}
