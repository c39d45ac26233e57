import { useState } from 'react';
import { useSay } from '../language/use-say.ts';
import { Field } from '../ui/field.tsx';

/** A field and a button that name somebody new at the bench. */
export function NewPerson({ onAdd }: { readonly onAdd: (name: string) => Promise<boolean> }) {
  const say = useSay();
  const [name, setName] = useState('');
  const [busy, setBusy] = useState(false);
  const add = async (): Promise<void> => {
    setBusy(true);
    if (await onAdd(name)) setName('');
    setBusy(false);
  };
  return (
    <form onSubmit={(event) => { event.preventDefault(); void add(); }}>
      <Field label={say('people.add')} value={name} onChange={setName} hint={say('people.add.hint')} maxLength={80} width="24rem" />
      <button type="submit" className="button" disabled={busy || name.trim() === ''}>{say('people.add.do')}</button>
    </form>
  );
}
