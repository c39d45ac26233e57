import type { Reading, State } from '#instrument';
import type { ReadingEntry } from '#workshop';
import { useQuery } from '@tanstack/react-query';
import { useCallback, useMemo, useSyncExternalStore } from 'react';
import { useLocale } from '../language/use-say.ts';
import { outbox } from '../outbox/the-outbox.ts';
import type { Envelope, ParcelStatus, PlaceKey } from '../outbox/parcel.ts';
import { usePiano } from './piano.tsx';
import { readingsQuery } from './queries.ts';
import { type ReadingBook, bookOf } from './reading-book.ts';

/** Every reading of the cycle looked at, what is still on its way included. */
export function useReadingBook(): ReadingBook {
  const { id, cycle } = usePiano();
  const { data } = useQuery(readingsQuery(id, cycle));
  const { parcels } = useSyncExternalStore(outbox.subscribe, outbox.state);
  return useMemo(() => bookOf(id, cycle, data, parcels), [id, cycle, data, parcels]);
}

/** Readings of one state by place: `c1/found/downWeightG/key/40/1`. */
export function useReadings(state: State): ReadonlyMap<PlaceKey, Reading> {
  return useReadingBook()[state];
}

/** How one place stands with the server: undefined when all of it is acknowledged. */
export function useStatusOf(place: PlaceKey): ParcelStatus | undefined {
  const { id } = usePiano();
  return useSyncExternalStore(outbox.subscribe, () => outbox.statusOf(id, place));
}

/** Takes figures of this piano as one step: shown at once, kept on the device, sent in order. */
export function useEnter(): (envelope: Omit<Envelope, 'cycle' | 'locale'>, entries: readonly ReadingEntry[], status?: 'waiting' | 'held') => string {
  const { id, cycle } = usePiano();
  const locale = useLocale();
  return useCallback((envelope, entries, status) => outbox.enter(id, { ...envelope, cycle, locale }, entries, status), [id, cycle, locale]);
}
