import type { KeptRecording, RecordingDraft } from '#instrument';
import { useQueryClient } from '@tanstack/react-query';
import { useCallback, useState } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { call } from '../../api/client.ts';
import { refreshPiano } from '../../api/queries.ts';
import { noteWritten } from '../../undo/undo.ts';
import { losslessCopyOf } from './lossless-copy.ts';
import { sendSound } from './send-sound.ts';
import type { Take } from './take.ts';

/** A sound file picked or taken, and what is to be told of it. */
export interface Picked {
  readonly id: string;
  readonly name: string;
  readonly bytes: Blob;
  readonly key: number | null;
  readonly takenAt: string | null;
}

/** How far the keeping of one file has come. */
export type Keeping = { readonly kind: 'waiting' } | { readonly kind: 'sending'; readonly progress: number } | { readonly kind: 'kept' } | { readonly kind: 'failed'; readonly failure: unknown };

/** Keeps sound files one after the other: bytes first, then what is told of them. One that fails does not stop the others. */
export function useKeeping() {
  const { id, cycle } = usePiano();
  const client = useQueryClient();
  const [keeping, setKeeping] = useState<ReadonlyMap<string, Keeping>>(new Map());
  const mark = useCallback((picked: string, how: Keeping): void => { setKeeping((now) => new Map(now).set(picked, how)); }, []);
  const keep = useCallback(async (files: readonly Picked[], take: Take, signal: AbortSignal): Promise<readonly string[]> => {
    setKeeping(new Map(files.map((file) => [file.id, { kind: 'waiting' }])));
    const kept: string[] = [];
    for (const file of files) {
      if (signal.aborted) break;
      try {
        await keepOne(id, { cycle, take, file, signal, onProgress: (progress) => { mark(file.id, { kind: 'sending', progress }); } });
        mark(file.id, { kind: 'kept' });
        kept.push(file.id);
      } catch (failure) {
        mark(file.id, { kind: 'failed', failure });
      }
    }
    await refreshPiano(id);
    await client.invalidateQueries({ queryKey: ['piano', id, 'jobs'] });
    return kept;
  }, [client, cycle, id, mark]);
  return { keeping, keep };
}

interface One {
  readonly cycle: number;
  readonly take: Take;
  readonly file: Picked;
  readonly signal: AbortSignal;
  readonly onProgress: (progress: number) => void;
}

async function keepOne(id: string, { cycle, take, file, signal, onProgress }: One): Promise<void> {
  onProgress(0);
  const copy = await losslessCopyOf(file.bytes);
  const share = copy === undefined ? 1 : file.bytes.size / (file.bytes.size + copy.size);
  const kept = await sendSound(file.bytes, { signal, onProgress: (part) => { onProgress(share * part); } });
  const keptCopy: KeptRecording | null = copy === undefined ? null : await sendSound(copy, { signal, onProgress: (part) => { onProgress(share + (1 - share) * part); } });
  const { state, contents, place, device, remark } = take;
  const draft: RecordingDraft = { cycle, state, contents, place, device, remark, file: kept, copy: keptCopy, fileName: file.name.slice(0, 255), key: file.key, takenAt: file.takenAt };
  const { id: recordingId } = await call('addRecording', { params: { id }, body: draft });
  await noteWritten(id, recordingId);
}
