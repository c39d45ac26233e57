import { useCallback, useSyncExternalStore } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { figuresIn, heldAt } from '../../outbox/parcel.ts';
import { outbox } from '../../outbox/the-outbox.ts';
import { useDesk } from '../desk.tsx';

/** How many figures of the state at the desk wait for the answer how they were weighed. */
export function useHeld(): number {
  const { id, cycle } = usePiano();
  const { state } = useDesk();
  return useSyncExternalStore(outbox.subscribe, useCallback(() => figuresIn(heldAt(outbox.state().parcels, { pianoId: id, cycle, state })), [id, cycle, state]));
}
