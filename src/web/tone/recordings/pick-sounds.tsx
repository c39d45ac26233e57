import { type DragEvent, useId, useState } from 'react';
import { useSay } from '../../language/use-say.ts';

const ACCEPTED = '.wav,.flac,.ogg,.oga,.mp3,.m4a,.aac,audio/*';

/** Sound files from the device, by picking or by dragging them here; any number at once. */
export function PickSounds({ onFiles, isBusy, about }: { readonly onFiles: (files: readonly File[]) => void; readonly isBusy: boolean; readonly about?: string }) {
  const say = useSay();
  const id = useId();
  const [isOver, setOver] = useState(false);
  const over = (event: DragEvent): void => {
    event.preventDefault();
    setOver(true);
  };
  const drop = (event: DragEvent): void => {
    event.preventDefault();
    setOver(false);
    if (!isBusy) onFiles([...event.dataTransfer.files]);
  };
  return (
    <div className={isOver ? 'sound-drop sound-drop-over' : 'sound-drop'} onDragOver={over} onDragLeave={() => { setOver(false); }} onDrop={drop}>
      <label className="button button-main sound-picker" htmlFor={id}>
        {say('tone.pick')}
        <input
          id={id} className="visually-hidden" type="file" accept={ACCEPTED} multiple disabled={isBusy}
          onChange={(event) => {
            const files = [...(event.target.files ?? [])];
            event.target.value = '';
            if (files.length > 0) onFiles(files);
          }}
        />
      </label>
      <p className="soft small">{about ?? say('tone.pick.about')}</p>
    </div>
  );
}
