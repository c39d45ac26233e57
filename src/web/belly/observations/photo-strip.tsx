import type { Photo } from '#instrument';
import { useState } from 'react';
import { useSay } from '../../language/use-say.ts';
import { AppDialog } from '../../ui/app-dialog.tsx';
import { photoAddress } from './send-photo.ts';
import './photos.css';

interface PhotoStripProps {
  readonly photos: readonly Photo[];
  readonly onRemove?: (photo: Photo) => void;
}

/** Photos small, each opening large. */
export function PhotoStrip({ photos, onRemove }: PhotoStripProps) {
  const say = useSay();
  const [large, setLarge] = useState<Photo>();
  if (photos.length === 0) return null;
  return (
    <>
      <ul className="photo-strip">
        {photos.map((photo) => (
          <li key={photo.hash}>
            <button type="button" className="photo-thumb" aria-label={say('belly.photo.open', { name: photo.name })} onClick={() => { setLarge(photo); }}>
              <img src={photoAddress(photo)} alt="" loading="lazy" decoding="async" />
            </button>
            {onRemove !== undefined && <button type="button" className="button" onClick={() => { onRemove(photo); }}>{say('belly.photo.remove', { name: photo.name })}</button>}
          </li>
        ))}
      </ul>
      {large !== undefined && (
        <AppDialog title={large.name} isOpen form="wide" onClose={() => { setLarge(undefined); }}>
          <img className="photo-large" src={photoAddress(large)} alt={large.name} />
        </AppDialog>
      )}
    </>
  );
}
