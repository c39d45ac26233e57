import { type KeyNumber, keyCountOf, noteNameOf } from '#instrument';
import { type SyntheticEvent, useState } from 'react';
import { usePiano } from '../api/piano.tsx';
import { useSay } from '../language/use-say.ts';
import { AppDialog } from '../ui/app-dialog.tsx';
import { Field } from '../ui/field.tsx';
import { keyTyped } from './key-typed.ts';

/** Asks for a key by its number or its note. */
export function ChooseKey({ onKey, onClose }: { readonly onKey: (key: KeyNumber) => void; readonly onClose: () => void }) {
  const say = useSay();
  const { compass } = usePiano();
  const [typed, setTyped] = useState('');
  const [isAsked, setAsked] = useState(false);
  const key = keyTyped(typed, compass);
  const submit = (event: SyntheticEvent): void => {
    event.preventDefault();
    setAsked(true);
    if (key === undefined) return;
    onKey(key);
    onClose();
  };
  return (
    <AppDialog title={say('action.choose')} isOpen onClose={onClose}>
      <form className="row choose-key" onSubmit={submit} noValidate>
        <Field
          label={say('action.intent.anchorKey')}
          value={typed}
          inputRef={(input) => { input?.focus(); }}
          onChange={setTyped}
          echo={key === undefined ? undefined : say('action.key', { note: noteNameOf(compass, key), key })}
          error={isAsked && key === undefined ? say('work.add.keyUnknown', { given: typed, last: keyCountOf(compass) }) : undefined}
        />
        <button type="submit" className="button button-main">{say('action.choose.do')}</button>
      </form>
    </AppDialog>
  );
}
