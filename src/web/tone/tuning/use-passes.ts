import type { TuningPassDraft, TuningTermsDraft } from '#instrument';
import { queryOptions, useMutation, useQuery } from '@tanstack/react-query';
import { call } from '../../api/client.ts';
import { usePiano } from '../../api/piano.tsx';
import { refreshPiano } from '../../api/queries.ts';
import { noteWritten } from '../../undo/undo.ts';

type Act = { readonly kind: 'add'; readonly draft: TuningPassDraft } | { readonly kind: 'change'; readonly id: string; readonly draft: TuningPassDraft } | { readonly kind: 'withdraw'; readonly id: string };

/** Keeps, corrects or withdraws a pass; each can be undone like any step. */
export function usePassing() {
  const { id } = usePiano();
  return useMutation({
    mutationFn: async (act: Act & { readonly onKept?: () => void }) => {
      const pass = act.kind === 'add' ? await call('addPass', { params: { id }, body: act.draft })
        : act.kind === 'change' ? await call('changePass', { params: { id, pid: act.id }, body: act.draft })
          : await call('withdrawPass', { params: { id, pid: act.id } });
      await noteWritten(id, pass.id);
    },
    onSuccess: async (_, { onKept }) => {
      onKept?.();
      await refreshPiano(id);
    },
  });
}

/** States the terms of the tuning; can be undone like any step. */
export function useStateTuning() {
  const { id, cycle } = usePiano();
  return useMutation({
    mutationFn: async ({ terms }: { readonly terms: TuningTermsDraft; readonly onKept: () => void }) => {
      await call('setTuning', { params: { id, cycle: String(cycle) }, body: terms });
      await noteWritten(id, `c${String(cycle)}`);
    },
    onSuccess: async (_, { onKept }) => {
      onKept();
      await refreshPiano(id);
    },
  });
}

const shopPassesQuery = (id: string) =>
  queryOptions({ queryKey: ['piano', id, 'shop-passes'], queryFn: ({ signal }) => call('listShopPasses', { params: { id }, signal }) });

/** Passes of every piano of the workshop this one belongs to; nothing while they are on their way. */
export function useShopPasses() {
  const { id } = usePiano();
  const { data } = useQuery(shopPassesQuery(id));
  return data?.passes;
}
