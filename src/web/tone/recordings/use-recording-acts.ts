import type { RecordingDraft } from '#instrument';
import { useMutation, useQueryClient } from '@tanstack/react-query';
import { call } from '../../api/client.ts';
import { usePiano } from '../../api/piano.tsx';
import { refreshPiano } from '../../api/queries.ts';
import { noteWritten } from '../../undo/undo.ts';

type Act =
  | { readonly kind: 'change'; readonly id: string; readonly change: Partial<Omit<RecordingDraft, 'file'>> }
  | { readonly kind: 'withdraw'; readonly id: string }
  | { readonly kind: 'again'; readonly ids: readonly string[] }
  | { readonly kind: 'cancel'; readonly id: string };

/** Corrects or withdraws a recording, as steps that can be undone; has it worked out again, or calls that off. */
export function useRecordingActs() {
  const { id } = usePiano();
  const client = useQueryClient();
  return useMutation({
    mutationFn: async (act: Act & { readonly onDone?: () => void }) => { await done(id, act); },
    onSuccess: async (_, { kind, onDone }) => {
      onDone?.();
      await (kind === 'change' || kind === 'withdraw' ? refreshPiano(id) : client.invalidateQueries({ queryKey: ['piano', id, 'jobs'] }));
    },
  });
}

async function done(id: string, act: Act): Promise<void> {
  switch (act.kind) {
    case 'change':
      await call('changeRecording', { params: { id, rid: act.id }, body: act.change });
      await noteWritten(id, act.id);
      return;
    case 'withdraw':
      await call('withdrawRecording', { params: { id, rid: act.id } });
      await noteWritten(id, act.id);
      return;
    case 'again':
      await call('analyseRecordings', { params: { id }, body: { recordings: [...act.ids], again: true } });
      return;
    case 'cancel':
      await call('cancelJob', { params: { id, jid: act.id } });
  }
}
