import type { BenchPiano, CardOf, WorkChange } from '#workshop';
import { queryOptions, useQuery } from '@tanstack/react-query';
import { useMemo } from 'react';
import { call } from '../api/client.ts';
import { refreshPiano } from '../api/queries.ts';
import { comingAsked } from '../shop/coming.ts';
import { SHOP_KEY, type ShopBook, useShopBook } from '../shop/shop-queries.ts';
import { noteWritten } from '../undo/undo.ts';

/** Under `shop`, so that every step of the shop makes it stale. */
export const benchQuery = queryOptions({
  queryKey: [...SHOP_KEY, 'bench'],
  queryFn: ({ signal }) => call('getBench', { signal }).then(({ pianos }) => pianos),
});

/** What the Bench page shows: the book of the shop, and the pianos with jobs. */
export interface BenchBook {
  readonly book: ShopBook;
  readonly pianos: readonly BenchPiano[];
}

/** The bench; undefined while it is fetched. */
export function useBenchBook(): { readonly bench: BenchBook | undefined; readonly error: Error | null; readonly refetch: () => void } {
  const coming = useShopBook(comingAsked);
  const { book, error, refetch } = useShopBook({ kinds: ['hours', 'purchase'] });
  const pianos = useQuery(benchQuery);
  const whole = useMemo(() => (book === undefined || coming.book === undefined ? undefined : { ...book, cards: [...coming.book.cards, ...book.cards] }), [book, coming.book]);
  return {
    bench: whole === undefined || pianos.data === undefined ? undefined : { book: whole, pianos: pianos.data },
    error: error ?? coming.error ?? pianos.error,
    refetch: () => { refetch(); coming.refetch(); void pianos.refetch(); },
  };
}

/** Changes several jobs of a piano alike, as one step that can be undone. */
export async function changeJobs(pianoId: string, items: readonly string[], change: WorkChange): Promise<void> {
  await call('changeJobs', { params: { id: pianoId }, body: { items: [...items], change } });
  if (items[0] !== undefined) await noteWritten(pianoId, items[0]);
  await refreshPiano(pianoId);
}

/** The line of the estimate that hours for some jobs counted towards at last; null where none ever did. */
export function lineOfJobs(jobs: readonly string[], entries: readonly Pick<CardOf<'hours'>, 'jobs' | 'line'>[]): string | null {
  return entries.findLast((entry) => entry.line !== null && entry.jobs.some((job) => jobs.includes(job)))?.line ?? null;
}
