import { keyCountOf } from '#instrument';
import { usePiano } from '../../api/piano.tsx';
import { sayProblem } from '../../api/say-problem.ts';
import { keyTyped } from '../../keys/key-typed.ts';
import { useFigures, useSay } from '../../language/use-say.ts';
import type { Keeping } from './use-keeping.ts';

/** A file waiting to be kept, with the key as typed. */
export interface PickedRow {
  readonly id: string;
  readonly file: File;
  readonly typedKey: string;
}

interface PickedListProps {
  readonly rows: readonly PickedRow[];
  readonly keeping: ReadonlyMap<string, Keeping>;
  /** False where one file holds many keys. */
  readonly hasKeys: boolean;
  readonly onKey: (id: string, typed: string) => void;
  readonly onRemove: (id: string) => void;
}

const MEGABYTE = 1_000_000;

/** The files picked, each with the key told of it: taken from its name where that plainly names one, and to be looked over before anything is kept. */
export function PickedList({ rows, keeping, hasKeys, onKey, onRemove }: PickedListProps) {
  const say = useSay();
  const figure = useFigures();
  return (
    <ul className="picked-list" aria-label={say('tone.picked')}>
      {rows.map(({ id, file, typedKey }) => (
        <li key={id}>
          <span className="picked-name">{file.name} <span className="soft small">{say('tone.megabytes', { value: figure(file.size / MEGABYTE, 1) })}</span></span>
          {hasKeys && <KeyCell name={file.name} typed={typedKey} onKey={(typed) => { onKey(id, typed); }} />}
          <KeepingWord how={keeping.get(id)} />
          <button type="button" className="button button-quiet" aria-label={say('tone.picked.removeOf', { name: file.name })} onClick={() => { onRemove(id); }}>{say('tone.picked.remove')}</button>
        </li>
      ))}
    </ul>
  );
}

function KeyCell({ name, typed, onKey }: { readonly name: string; readonly typed: string; readonly onKey: (typed: string) => void }) {
  const say = useSay();
  const { compass } = usePiano();
  const isWrong = typed.trim() !== '' && keyTyped(typed, compass) === undefined;
  return (
    <span className="picked-key">
      <input className="input" type="text" size={6} autoComplete="off" aria-label={say('tone.picked.key', { name })} aria-invalid={isWrong ? true : undefined} placeholder={say('tone.key.unknown')} value={typed} onChange={(event) => { onKey(event.target.value); }} />
      {isWrong && <span className="field-error small" role="alert">{say('tone.picked.noKey', { typed, keys: keyCountOf(compass) })}</span>}
    </span>
  );
}

function KeepingWord({ how }: { readonly how: Keeping | undefined }) {
  const say = useSay();
  if (how === undefined) return null;
  switch (how.kind) {
    case 'waiting': return <span className="soft small">{say('tone.keep.waiting')}</span>;
    case 'sending': return <progress value={how.progress} max={1} aria-label={say('tone.keep.sending')} />;
    case 'kept': return <span className="small"><span aria-hidden="true">✓ </span>{say('tone.keep.kept')}</span>;
    case 'failed': return <span className="field-error small" role="alert"><span aria-hidden="true">✕ </span>{sayProblem(how.failure, say)}</span>;
  }
}
