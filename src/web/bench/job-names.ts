import { compassOf, noteNameOf } from '#instrument';
import type { BenchPiano, WorkItem } from '#workshop';
import { useSay } from '../language/use-say.ts';
import { nameOfJob } from '../work/name-of-job.ts';
import type { BenchBook } from './bench-queries.ts';
import type { ClockTarget } from './clock-steps.ts';

/** Puts jobs at the bench into words. */
export interface JobNames {
  /** What some like jobs are, without their piano. */
  readonly jobs: (items: readonly WorkItem[]) => string;
  /** The keys they are on, or that they are of the whole piano. */
  readonly keys: (piano: BenchPiano, items: readonly WorkItem[]) => string;
  /** What a clock runs for, or hours are noted for: the job and its piano. */
  readonly target: (target: Pick<ClockTarget, 'pianoId' | 'jobs' | 'line'>) => string;
}

/** Keys listed by name before the rest is left to the count. */
const MOST_KEYS = 8;

export function useJobNames({ book, pianos }: BenchBook): JobNames {
  const say = useSay();
  const jobs = (items: readonly WorkItem[]): string => [...new Set(items.map((item) => nameOfJob(say, item)))].join(', ');
  const keys = ({ instrument }: BenchPiano, items: readonly WorkItem[]): string => {
    const compass = compassOf(instrument);
    const named = items.flatMap(({ key }) => (key === null ? [] : [noteNameOf(compass, key)]));
    if (named.length === 0) return say('bench.card.whole');
    return say('bench.card.keys', { count: named.length, keys: [...named.slice(0, MOST_KEYS), ...(named.length > MOST_KEYS ? ['…'] : [])].join(' ') });
  };
  const target = ({ pianoId, jobs: ids, line }: Pick<ClockTarget, 'pianoId' | 'jobs' | 'line'>): string => {
    const piano = pianos.find(({ instrument }) => instrument.id === pianoId);
    const items = piano?.work.filter(({ id }) => ids.includes(id)) ?? [];
    const what = piano !== undefined && items.length > 0 ? jobs(items) : (piano?.estimate?.lines.find(({ id }) => id === line)?.words ?? say('bench.hours.noTask'));
    return `${what} · ${book.pianos.get(pianoId) ?? pianoId}`;
  };
  return { jobs, keys, target };
}
