import type { Observation, ObservationDraft } from '#instrument';
import { useMutation } from '@tanstack/react-query';
import { call } from '../../api/client.ts';
import { usePiano } from '../../api/piano.tsx';
import { refreshPiano } from '../../api/queries.ts';
import { noteWritten } from '../../undo/undo.ts';

type Act = { readonly kind: 'add'; readonly draft: ObservationDraft } | { readonly kind: 'change'; readonly id: string; readonly draft: ObservationDraft } | { readonly kind: 'withdraw'; readonly id: string };

/** Keeps, corrects or withdraws an observation; each can be undone like any step. */
export function useObserving() {
  const { id } = usePiano();
  return useMutation({
    mutationFn: async (act: Act & { readonly onKept?: () => void }) => {
      const seen = await done(id, act);
      await noteWritten(id, seen.id);
    },
    onSuccess: async (_, { onKept }) => {
      onKept?.();
      await refreshPiano(id);
    },
  });
}

async function done(id: string, act: Act): Promise<Observation> {
  switch (act.kind) {
    case 'add': return await call('addObservation', { params: { id }, body: act.draft });
    case 'change': return await call('changeObservation', { params: { id, oid: act.id }, body: act.draft });
    case 'withdraw': return await call('withdrawObservation', { params: { id, oid: act.id } });
  }
}
