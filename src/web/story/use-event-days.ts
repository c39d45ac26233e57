import type { EventDay } from '#workshop';
import { useQuery } from '@tanstack/react-query';
import { call } from '../api/client.ts';
import { usePiano } from '../api/piano.tsx';
import type { StayDays } from './owners-line.ts';

const zone = (): string => Intl.DateTimeFormat().resolvedOptions().timeZone;

/** Days of the piano's log by the clock of this device, the newest first; undefined while they are fetched. */
export function useEventDays(): { readonly days: readonly EventDay[] | undefined; readonly error: Error | null; readonly refetch: () => void } {
  const { id } = usePiano();
  const { data, error, refetch } = useQuery({
    queryKey: ['piano', id, 'days'],
    queryFn: ({ signal }) => call('listEventDays', { params: { id }, query: { zone: zone() }, signal }).then(({ days }) => days),
  });
  return { days: data, error, refetch: () => void refetch() };
}

/** From when to when something was written in each stay, the first stay first. */
export function staysOf(days: readonly EventDay[]): readonly StayDays[] {
  const stays = new Map<number, StayDays>();
  for (const { cycle, day } of days) stays.set(cycle, { cycle, from: day, until: stays.get(cycle)?.until ?? day });
  return [...stays.values()].toSorted((a, b) => a.cycle - b.cycle);
}

/** The days of a stay in words, one day by itself. */
export const sayStayDays = ({ from, until }: Pick<StayDays, 'from' | 'until'>, day: (iso: string) => string): string => (from === until ? day(from) : `${day(from)} – ${day(until)}`);

/** How many events some days hold of each kind of change. */
export function countsOf(days: readonly EventDay[]): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const { what } of days) for (const [entity, count] of Object.entries(what)) counts.set(entity, (counts.get(entity) ?? 0) + count);
  return counts;
}

/** How many events some days hold. */
export function eventsIn(days: readonly EventDay[]): number {
  return days.reduce((sum, { first, last }) => sum + last - first + 1, 0);
}
