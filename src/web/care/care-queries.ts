import type { CareChange, CareDraft, LoggerSource } from '#workshop';
import { queryOptions, useMutation } from '@tanstack/react-query';
import { call } from '../api/client.ts';
import { usePiano } from '../api/piano.tsx';
import { refreshPiano } from '../api/queries.ts';
import { noteWritten } from '../undo/undo.ts';

/** The log of the air, hour by hour. */
export const climateQuery = (id: string) =>
  queryOptions({ queryKey: ['piano', id, 'climate'], queryFn: ({ signal }) => call('getClimate', { params: { id }, signal }) });

export type CareAct =
  | { readonly kind: 'add'; readonly draft: CareDraft }
  | { readonly kind: 'change'; readonly id: string; readonly change: CareChange }
  | { readonly kind: 'withdraw'; readonly id: string }
  | { readonly kind: 'logger'; readonly source: LoggerSource };

/** Keeps, changes or withdraws a card of the care; each can be undone like any step. */
export function useCaring() {
  const { id } = usePiano();
  return useMutation({
    mutationFn: async (act: CareAct & { readonly onKept?: () => void }) => {
      const card = await written(id, act);
      await noteWritten(id, card.id);
    },
    onSuccess: async (_, { onKept }) => {
      onKept?.();
      await refreshPiano(id);
    },
  });
}

async function written(id: string, act: CareAct) {
  switch (act.kind) {
    case 'add': return await call('addCare', { params: { id }, body: act.draft });
    case 'change': return await call('changeCare', { params: { id, kid: act.id }, body: act.change });
    case 'withdraw': return await call('withdrawCare', { params: { id, kid: act.id } });
    case 'logger': return await call('addLogger', { params: { id }, body: act.source });
  }
}
