import type { PaperChange, PaperDraft, PaperRecord } from '#workshop';
import { useMutation } from '@tanstack/react-query';
import { call } from '../api/client.ts';
import { usePiano } from '../api/piano.tsx';
import { refreshPiano } from '../api/queries.ts';
import { noteWritten } from '../undo/undo.ts';

/** Keeps a record of this piano, or changes the fields that differ of one that stands; can be undone like any step. */
export async function keepPaper(pianoId: string, draft: PaperDraft, standing?: PaperRecord): Promise<void> {
  const record = standing === undefined
    ? await call('addPaper', { params: { id: pianoId }, body: draft })
    : await call('changePaper', { params: { id: pianoId, rid: standing.id }, body: changeOf(standing, draft) });
  await noteWritten(pianoId, record.id);
  await refreshPiano(pianoId);
}

function changeOf(standing: PaperRecord, draft: PaperDraft): PaperChange {
  const known = standing as unknown as Readonly<Record<string, unknown>>;
  const differing = Object.entries(draft).filter(([name, value]) => JSON.stringify(value) !== JSON.stringify(known[name]));
  return { ...Object.fromEntries(differing), kind: standing.kind };
}

/** Withdraws a record; undo brings it back. */
export function useWithdrawing() {
  const { id } = usePiano();
  return useMutation({
    mutationFn: async (record: PaperRecord) => {
      await call('withdrawPaper', { params: { id, rid: record.id } });
      await noteWritten(id, record.id);
    },
    onSuccess: async () => { await refreshPiano(id); },
  });
}
