import { type PlacedNote, soundOf } from '#workshop';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { soundAddress } from '../recordings/send-sound.ts';
import type { PictureAsked, PictureSaid } from './picture.worker.ts';

/** The pictures of a note and its sound, ready to be played. */
export type WorkedPicture = Extract<PictureSaid, { readonly kind: 'picture' }>;

/** Works the pictures of a note out in a worker; undefined while they are on their way. A note turned away from ends its worker. */
export function usePicture(placed: PlacedNote | undefined): { readonly picture: WorkedPicture | undefined; readonly part: number; readonly hasFailed: boolean } {
  const [part, setPart] = useState(0);
  const hash = placed === undefined ? '' : soundOf(placed.recording).hash;
  const note = placed?.heard.note;
  const { data, isError } = useQuery({
    queryKey: ['picture', hash, note?.onsetS],
    enabled: note !== undefined,
    staleTime: Infinity,
    gcTime: 60_000,
    retry: false,
    queryFn: async ({ signal }) => {
      if (note === undefined) throw new Error('no note');
      const bytes = await (await fetch(soundAddress(hash), { signal })).arrayBuffer();
      const { onsetS, endS, windowFromS, windowToS, f0Hz } = note;
      return await pictureIn({ bytes, span: { onsetS, endS, windowFromS, windowToS, f0Hz } }, signal, setPart);
    },
  });
  return { picture: data, part, hasFailed: isError };
}

function pictureIn(asked: PictureAsked, signal: AbortSignal, onPart: (part: number) => void): Promise<WorkedPicture> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(new URL('./picture.worker.ts', import.meta.url), { type: 'module' });
    const end = (act: () => void): void => {
      worker.terminate();
      act();
    };
    worker.addEventListener('message', ({ data }: MessageEvent<PictureSaid>) => {
      if (data.kind === 'progress') onPart(data.part);
      else if (data.kind === 'picture') end(() => { resolve(data); });
      else end(() => { reject(new Error('unreadable')); });
    });
    worker.addEventListener('error', (event) => { end(() => { reject(new Error(event.message)); }); });
    signal.addEventListener('abort', () => { end(() => { reject(signal.reason as Error); }); });
    worker.postMessage(asked, [asked.bytes]);
  });
}
