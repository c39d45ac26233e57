import type { PerBand } from '#room';
import type { Result } from '#result';
import { type RoomConsequences, type RoomGiven, roomConsequencesOf } from '#workshop';
import { useMemo } from 'react';
import { usePiano } from '../api/piano.tsx';

/** All that follows from a room, worked out anew when it changes. */
export function useRoom(given: RoomGiven): Result<RoomConsequences> {
  const { compass, instrument: { a4Hz } } = usePiano();
  return useMemo(() => roomConsequencesOf(given, { compass, a4Hz }), [given, compass, a4Hz]);
}

/** How long a kept room rings by band; nothing where none is kept or nothing follows from it. */
export function useKeptTimes(kept: RoomGiven | undefined): PerBand | undefined {
  const { compass, instrument: { a4Hz } } = usePiano();
  return useMemo(() => {
    const known = kept === undefined ? undefined : roomConsequencesOf(kept, { compass, a4Hz });
    return known?.ok === true ? known.value.times[known.value.model] : undefined;
  }, [kept, compass, a4Hz]);
}
