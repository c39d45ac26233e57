import { useRef, useState } from 'react';
import { useFigures, useSay } from '../../language/use-say.ts';
import { Note } from '../../ui/note.tsx';
import { MAX_MB } from './use-import.ts';
import './import.css';

/** Where a file is picked or dropped. */
export function FilePick({ onFile }: { readonly onFile: (file: File) => void }) {
  const say = useSay();
  const figure = useFigures();
  const input = useRef<HTMLInputElement>(null);
  const [isOver, setOver] = useState(false);
  const [tooLarge, setTooLarge] = useState<number>();
  const take = (file: File | undefined): void => {
    if (file === undefined) return;
    const megabytes = file.size / 1024 / 1024;
    if (megabytes > MAX_MB) setTooLarge(megabytes);
    else onFile(file);
  };
  return (
    <div
      className="file-pick"
      data-over={isOver || undefined}
      onDragOver={(event) => { event.preventDefault(); setOver(true); }}
      onDragLeave={() => { setOver(false); }}
      onDrop={(event) => { event.preventDefault(); setOver(false); take(event.dataTransfer.files[0]); }}
    >
      <button type="button" className="button button-main" onClick={() => { input.current?.click(); }}>{say('readings.import.pick')}</button>
      <span className="soft">{say('readings.import.drop')}</span>
      <input ref={input} className="visually-hidden" tabIndex={-1} type="file" aria-label={say('readings.import.pick')} accept=".csv,.tsv,.txt,.xlsx,text/csv,text/tab-separated-values" onChange={(event) => { take(event.target.files?.[0]); event.target.value = ''; }} />
      {tooLarge !== undefined && <Note tone="bad" role="alert">{say('readings.import.tooLarge', { size: figure(tooLarge, 1), max: MAX_MB })}</Note>}
    </div>
  );
}
