import { type Recording, keyCountOf, noteNameOf, recordedContents } from '#instrument';
import { type SyntheticEvent, useState } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { keyTyped } from '../../keys/key-typed.ts';
import { useSay } from '../../language/use-say.ts';
import { StateMark } from '../../leaves/state-mark.tsx';
import { ProblemNote } from '../../shell/problem-note.tsx';
import { Choice } from '../../ui/choice.tsx';
import { Field } from '../../ui/field.tsx';
import { SelectField } from '../../ui/select-field.tsx';
import { useRecordingActs } from './use-recording-acts.ts';

const heardStates = ['found', 'finished'] as const;

/** Corrects what is told of a recording; the sound itself never changes. */
export function RecordingForm({ recording, onClose }: { readonly recording: Recording; readonly onClose: () => void }) {
  const say = useSay();
  const { compass } = usePiano();
  const acts = useRecordingActs();
  const [form, setForm] = useState(() => ({ state: recording.state, contents: recording.contents, key: recording.key === null ? '' : noteNameOf(compass, recording.key), place: recording.place, device: recording.device, remark: recording.remark }));
  const set = (part: Partial<typeof form>): void => { setForm((now) => ({ ...now, ...part })); };
  const key = form.key.trim() === '' ? null : keyTyped(form.key, compass);
  const submit = (event: SyntheticEvent): void => {
    event.preventDefault();
    if (key === undefined) return;
    acts.mutate({ kind: 'change', id: recording.id, change: { ...form, key }, onDone: onClose });
  };
  return (
    <form className="panel" onSubmit={submit} noValidate aria-label={say('tone.change.of', { name: recording.fileName })}>
      <div className="fields">
        <Choice label={say('readings.state')} value={form.state} options={heardStates.map((value) => ({ value, label: <StateMark state={value} /> }))} onChange={(state) => { set({ state }); }} />
        <SelectField label={say('recording.field.contents')} value={form.contents} options={recordedContents.map((value) => ({ value, label: say(`recording.contents.${value}`) }))} onChange={(contents) => { set({ contents }); }} />
        <Field label={say('recording.field.key')} value={form.key} hint={say('belly.seen.keyHint')} error={key === undefined ? say('tone.picked.noKey', { typed: form.key, keys: keyCountOf(compass) }) : undefined} onChange={(typed) => { set({ key: typed }); }} />
        <Field label={say('recording.field.place')} value={form.place} maxLength={200} onChange={(place) => { set({ place }); }} />
        <Field label={say('recording.field.device')} value={form.device} maxLength={200} onChange={(device) => { set({ device }); }} />
      </div>
      <Field label={say('recording.field.remark')} value={form.remark} lines={2} maxLength={4000} onChange={(remark) => { set({ remark }); }} />
      {acts.error !== null && <ProblemNote problem={acts.error} />}
      <div className="row">
        <button type="submit" className="button button-main" disabled={acts.isPending}>{say('tone.change.keep')}</button>
        <button type="button" className="button" onClick={onClose}>{say('action.intent.cancel')}</button>
      </div>
    </form>
  );
}
