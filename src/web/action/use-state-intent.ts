import type { TouchIntent } from '#instrument';
import { useMutation } from '@tanstack/react-query';
import { call } from '../api/client.ts';
import { usePiano } from '../api/piano.tsx';
import { refreshPiano } from '../api/queries.ts';
import { noteWritten } from '../undo/undo.ts';

/** States what is to be even; can be undone like any step. */
export function useStateIntent(onDone: () => void) {
  const { id, cycle } = usePiano();
  return useMutation({
    mutationFn: async (intent: TouchIntent) => {
      await call('setIntent', { params: { id, cycle: String(cycle) }, body: intent });
      await noteWritten(id, `c${String(cycle)}`);
    },
    onSuccess: async () => {
      await refreshPiano(id);
      onDone();
    },
  });
}
