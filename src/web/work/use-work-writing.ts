import type { WorkItem, WorkItemDraft } from '#workshop';
import { useMutation } from '@tanstack/react-query';
import { call } from '../api/client.ts';
import { usePiano } from '../api/piano.tsx';
import { refreshPiano } from '../api/queries.ts';
import { noteWritten } from '../undo/undo.ts';

/** Writes to the work list; every step can be undone. */
export interface WorkWriting {
  readonly isBusy: boolean;
  readonly problem: Error | null;
  readonly add: (drafts: readonly WorkItemDraft[]) => void;
  readonly change: (item: WorkItem, status: WorkItem['status']) => void;
}

export function useWorkWriting(): WorkWriting {
  const { id } = usePiano();
  const { mutate, isPending, error } = useMutation({
    mutationFn: async (write: () => Promise<string | undefined>) => {
      const written = await write();
      if (written !== undefined) await noteWritten(id, written);
    },
    onSettled: () => refreshPiano(id),
  });
  return {
    isBusy: isPending,
    problem: error,
    add: (drafts) => { mutate(async () => (await call('addWork', { params: { id }, body: { items: [...drafts] } })).work[0]?.id); },
    change: (item, status) => { mutate(async () => (await call('changeWork', { params: { id, wid: item.id }, body: { status } })).id); },
  };
}
