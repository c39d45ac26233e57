import type { ActionTermsDraft } from '#instrument';
import { useMutation } from '@tanstack/react-query';
import { call } from '../api/client.ts';
import { usePiano } from '../api/piano.tsx';
import { refreshPiano } from '../api/queries.ts';
import { noteWritten } from '../undo/undo.ts';

/** States the terms of the action; can be undone like any step. */
export function useStateAction() {
  const { id, cycle } = usePiano();
  return useMutation({
    mutationFn: async ({ terms }: { readonly terms: ActionTermsDraft; readonly onKept: () => void }) => {
      await call('setAction', { params: { id, cycle: String(cycle) }, body: terms });
      await noteWritten(id, `c${String(cycle)}`);
    },
    onSuccess: async (_, { onKept }) => {
      onKept();
      await refreshPiano(id);
    },
  });
}
