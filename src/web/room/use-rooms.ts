import type { RoomDraft } from '#workshop';
import { useMutation } from '@tanstack/react-query';
import { call } from '../api/client.ts';
import { usePiano } from '../api/piano.tsx';
import { refreshPiano } from '../api/queries.ts';
import { noteWritten } from '../undo/undo.ts';

type Act = { readonly kind: 'add'; readonly draft: RoomDraft } | { readonly kind: 'change'; readonly id: string; readonly draft: Partial<RoomDraft> } | { readonly kind: 'withdraw'; readonly id: string };

/** Keeps, changes or withdraws a room; each can be undone like any step. */
export function useRoomWriting() {
  const { id } = usePiano();
  return useMutation({
    scope: { id: `rooms ${id}` },
    mutationFn: async (act: Act & { readonly onKept?: (roomId: string) => void }) => {
      const room = act.kind === 'add' ? await call('addRoom', { params: { id }, body: act.draft })
        : act.kind === 'change' ? await call('changeRoom', { params: { id, oid: act.id }, body: act.draft })
          : await call('withdrawRoom', { params: { id, oid: act.id } });
      await noteWritten(id, room.id);
      return room.id;
    },
    onSuccess: async (roomId, { onKept }) => {
      await refreshPiano(id);
      onKept?.(roomId);
    },
  });
}
