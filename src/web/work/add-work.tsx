import { keyCountOf } from '#instrument';
import type { WorkItemDraft } from '#workshop';
import { type SyntheticEvent, useState } from 'react';
import { keyTyped } from '../action/intent-draft.ts';
import { usePiano } from '../api/piano.tsx';
import { useSay } from '../language/use-say.ts';
import { Field } from '../ui/field.tsx';

/** A job of one's own: words, a key or the whole piano. */
export function AddWork({ onAdd }: { readonly onAdd: (draft: Omit<WorkItemDraft, 'cycle'>) => void }) {
  const say = useSay();
  const { compass } = usePiano();
  const [words, setWords] = useState('');
  const [key, setKey] = useState('');
  const [isAsked, setAsked] = useState(false);
  const number = key.trim() === '' ? null : keyTyped(key, compass);
  const submit = (event: SyntheticEvent): void => {
    event.preventDefault();
    setAsked(true);
    if (words.trim() === '' || number === undefined) return;
    onAdd({ key: number, remedy: 'other', remark: words.trim(), stage: 5 });
    setWords('');
    setKey('');
    setAsked(false);
  };
  return (
    <form className="panel no-print" onSubmit={submit} noValidate>
      <h2>{say('work.add')}</h2>
      <div className="fields">
        <Field label={say('work.add.words')} value={words} maxLength={2000} onChange={setWords} error={isAsked && words.trim() === '' ? say('work.add.wordsNeeded') : undefined} />
        <Field label={say('work.add.key')} value={key} onChange={setKey} hint={say('work.add.keyHint')} error={number === undefined ? say('work.add.keyUnknown', { given: key, last: keyCountOf(compass) }) : undefined} />
      </div>
      <div className="row">
        <button type="submit" className="button">{say('work.add.do')}</button>
      </div>
    </form>
  );
}
