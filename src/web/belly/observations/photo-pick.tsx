import { MOST_PHOTOS, PHOTO_LIMIT_BYTES, type Photo, photoTypes } from '#instrument';
import { useId, useState } from 'react';
import { ApiProblem } from '../../api/problem.ts';
import { sayProblem } from '../../api/say-problem.ts';
import { useFigures, useSay } from '../../language/use-say.ts';
import { Note } from '../../ui/note.tsx';
import { PhotoStrip } from './photo-strip.tsx';
import { NoPhoto, type SentPhoto, sendPhoto } from './send-photo.ts';
import './photos.css';

interface PhotoPickProps {
  readonly photos: readonly Photo[];
  readonly onAdd: (photo: Photo) => void;
  readonly onRemove: (photo: Photo) => void;
}

const MEGABYTE = 1024 * 1024;

/** Photos from the device or its camera, kept on the server one by one as they are picked. */
export function PhotoPick({ photos, onAdd, onRemove }: PhotoPickProps) {
  const say = useSay();
  const figure = useFigures();
  const id = useId();
  const [sending, setSending] = useState(0);
  const [said, setSaid] = useState<readonly { readonly text: string; readonly isBad: boolean }[]>([]);
  const limit = PHOTO_LIMIT_BYTES / MEGABYTE;
  const why = (name: string, failure: unknown): string => {
    if (failure instanceof NoPhoto) return say('belly.photo.notOne', { name, kinds: photoTypes.map((type) => type.slice(6).toUpperCase()).join(', ') });
    if (failure instanceof ApiProblem && failure.status === 0) return say('belly.photo.offline', { name });
    return say('belly.photo.failed', { name, why: sayProblem(failure, say) });
  };
  const take = async (files: readonly File[]): Promise<void> => {
    setSaid([]);
    const told: { text: string; isBad: boolean }[] = [];
    for (const [index, file] of files.entries()) {
      setSending(files.length - index);
      try {
        const { photo, shrunk } = await sendPhoto(file);
        onAdd(photo);
        if (shrunk !== undefined) told.push({ text: shrunkText(file, shrunk), isBad: false });
      } catch (failure) {
        told.push({ text: why(file.name, failure), isBad: true });
      }
    }
    setSending(0);
    setSaid(told);
  };
  const shrunkText = (file: File, { blob, before, after }: NonNullable<SentPhoto['shrunk']>): string =>
    say('belly.photo.shrunk', { name: file.name, was: figure(file.size / MEGABYTE, 1), is: figure(blob.size / MEGABYTE, 1), limit, before: before.join(' × '), after: after.join(' × ') });
  const picker = (label: string, rest: { readonly multiple?: boolean; readonly capture?: 'environment' }, name: string) => (
    <label className="button photo-picker" htmlFor={`${id}-${name}`}>
      {label}
      <input
        id={`${id}-${name}`} className="visually-hidden" type="file" accept="image/*" {...rest} disabled={sending > 0 || photos.length >= MOST_PHOTOS}
        onChange={(event) => {
          const files = [...(event.target.files ?? [])].slice(0, MOST_PHOTOS - photos.length);
          event.target.value = '';
          void take(files);
        }}
      />
    </label>
  );
  return (
    <div className="photo-pick">
      <div className="row">
        {picker(say('belly.photo.choose'), { multiple: true }, 'choose')}
        {picker(say('belly.photo.take'), { capture: 'environment' }, 'take')}
      </div>
      <p className="soft small">{say('belly.photo.about', { limit })}</p>
      <div aria-live="polite">
        {sending > 0 && <p>{say('belly.photo.sending', { count: sending })}</p>}
        {said.map(({ text, isBad }) => <Note key={text} tone={isBad ? 'bad' : 'plain'}><p>{isBad && <span aria-hidden="true">✕ </span>}{text}</p></Note>)}
      </div>
      <PhotoStrip photos={photos} onRemove={onRemove} />
    </div>
  );
}
