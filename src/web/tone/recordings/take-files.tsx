import { useRef, useState } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { keyTyped } from '../../keys/key-typed.ts';
import { useSay } from '../../language/use-say.ts';
import { noteNameOf } from '#instrument';
import { keyInName } from '#workshop';
import { PickSounds } from './pick-sounds.tsx';
import { PickedList, type PickedRow } from './picked-list.tsx';
import type { Take } from './take.ts';
import { type Picked, useKeeping } from './use-keeping.ts';

/** Sound files taken in: picked, looked over, kept one after the other. */
export function TakeFiles({ take }: { readonly take: Take }) {
  const say = useSay();
  const { compass } = usePiano();
  const [rows, setRows] = useState<readonly PickedRow[]>([]);
  const [isBusy, setBusy] = useState(false);
  const { keeping, keep } = useKeeping();
  const callOff = useRef<AbortController>(null);
  const hasKeys = take.contents === 'note' || take.contents === 'ladder';
  const pick = (files: readonly File[]): void => {
    setRows((now) => [...now, ...files.map((file): PickedRow => {
      const key = keyInName(file.name, compass);
      return { id: crypto.randomUUID(), file, typedKey: key === undefined ? '' : noteNameOf(compass, key) };
    })]);
  };
  const isWrong = ({ typedKey }: PickedRow): boolean => hasKeys && typedKey.trim() !== '' && keyTyped(typedKey, compass) === undefined;
  const keepAll = async (): Promise<void> => {
    callOff.current = new AbortController();
    setBusy(true);
    const files = rows.map(({ id, file, typedKey }): Picked => ({ id, name: file.name, bytes: file, key: hasKeys ? (keyTyped(typedKey, compass) ?? null) : null, takenAt: null }));
    const kept = await keep(files, take, callOff.current.signal);
    setRows((now) => now.filter(({ id }) => !kept.includes(id)));
    setBusy(false);
  };
  return (
    <>
      <PickSounds onFiles={pick} isBusy={isBusy} />
      {rows.length > 0 && (
        <>
          <PickedList rows={rows} keeping={keeping} hasKeys={hasKeys} onKey={(id, typedKey) => { setRows((now) => now.map((row) => (row.id === id ? { ...row, typedKey } : row))); }} onRemove={(id) => { setRows((now) => now.filter((row) => row.id !== id)); }} />
          <div className="row">
            <button type="button" className="button button-main" disabled={isBusy || rows.some(isWrong)} onClick={() => void keepAll()}>{say('tone.keep', { count: rows.length })}</button>
            {isBusy && <button type="button" className="button" onClick={() => { callOff.current?.abort(new Error(say('tone.keep.calledOff'))); }}>{say('tone.keep.stop')}</button>}
          </div>
        </>
      )}
    </>
  );
}
