import { keyCountOf } from '#instrument';
import type { WorkItemDraft } from '#workshop';
import { type SyntheticEvent, useState } from 'react';
import { keyTyped } from '../keys/key-typed.ts';
import { usePiano } from '../api/piano.tsx';
import { useSay } from '../language/use-say.ts';
import { useDraft } from '../kept/draft.ts';
import { TakenUp } from '../kept/taken-up.tsx';
import { Field } from '../ui/field.tsx';

const EMPTY = { words: '', key: '' };

/** A job of one's own: words, a key or the whole piano. */
export function AddWork({ onAdd }: { readonly onAdd: (draft: Omit<WorkItemDraft, 'cycle'>) => void }) {
  const say = useSay();
  const { id, compass, cycle } = usePiano();
  const { typed: { words, key }, change, isTakenUp } = useDraft(`work.${id}.${String(cycle)}`, () => EMPTY);
  const [isAsked, setAsked] = useState(false);
  const number = key.trim() === '' ? null : keyTyped(key, compass);
  const submit = (event: SyntheticEvent): void => {
    event.preventDefault();
    setAsked(true);
    if (words.trim() === '' || number === undefined) return;
    onAdd({ key: number, remedy: 'other', remark: words.trim(), stage: 5 });
    change(() => EMPTY);
    setAsked(false);
  };
  return (
    <form className="panel no-print" onSubmit={submit} noValidate>
      <h2>{say('work.add')}</h2>
      {isTakenUp && <TakenUp />}
      <div className="fields">
        <Field label={say('work.add.words')} value={words} maxLength={2000} onChange={(typed) => { change((now) => ({ ...now, words: typed })); }} error={isAsked && words.trim() === '' ? say('work.add.wordsNeeded') : undefined} />
        <Field label={say('work.add.key')} value={key} onChange={(typed) => { change((now) => ({ ...now, key: typed })); }} hint={say('work.add.keyHint')} error={number === undefined ? say('work.add.keyUnknown', { given: key, last: keyCountOf(compass) }) : undefined} />
      </div>
      <div className="row">
        <button type="submit" className="button">{say('work.add.do')}</button>
      </div>
    </form>
  );
}
