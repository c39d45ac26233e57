import type { ExpectedReadings, WorkItem, WorkItemDraft } from '#workshop';
import { useMutation } from '@tanstack/react-query';
import { startTransition, useOptimistic } from 'react';
import { call } from '../api/client.ts';
import { usePiano } from '../api/piano.tsx';
import { refreshPiano } from '../api/queries.ts';
import { noteWritten } from '../undo/undo.ts';

/** The work list and what can be written to it; every step can be undone. */
export interface WorkWriting {
  /** The list with steps on their way shown as taken; one that is refused goes back. */
  readonly work: readonly WorkItem[];
  readonly isBusy: boolean;
  readonly problem: Error | null;
  /** With the readings expected once the jobs are done, as one step. */
  readonly add: (drafts: readonly WorkItemDraft[], expected?: ExpectedReadings) => void;
  readonly change: (item: WorkItem, status: WorkItem['status']) => void;
}

export function useWorkWriting(): WorkWriting {
  const { id, work } = usePiano();
  const [shown, show] = useOptimistic(work, (standing, changed: WorkItem) => standing.map((item) => (item.id === changed.id ? changed : item)));
  const { mutate, mutateAsync, isPending, error } = useMutation({
    // One after the other, so that the log keeps the order of the hand.
    scope: { id: `work ${id}` },
    mutationFn: async (write: () => Promise<string | undefined>) => {
      const written = await write();
      if (written !== undefined) await noteWritten(id, written);
    },
    onSettled: () => refreshPiano(id),
  });
  return {
    work: shown,
    isBusy: isPending,
    problem: error,
    add: (drafts, expected) => { mutate(async () => (await call('addWork', { params: { id }, body: { items: [...drafts], ...(expected === undefined ? {} : { expected }) } })).work[0]?.id); },
    change: (item, status) => {
      startTransition(async () => {
        show({ ...item, status, doneAt: status === 'done' ? new Date().toISOString() : null });
        // What went wrong stands in `error`.
        await mutateAsync(async () => (await call('changeWork', { params: { id, wid: item.id }, body: { status } })).id).catch(() => undefined);
      });
    },
  };
}
