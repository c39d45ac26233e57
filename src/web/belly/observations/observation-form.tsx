import { type Observation, type ObservedPart, type State, bellyParts, observedFaults, observedParts, severities } from '#instrument';
import { ApiProblem } from '../../api/problem.ts';
import { usePiano } from '../../api/piano.tsx';
import { TakenUp } from '../../kept/taken-up.tsx';
import { useLocale, useSay } from '../../language/use-say.ts';
import { ProblemNote } from '../../shell/problem-note.tsx';
import { useDraftForm } from '../../terms/use-draft-form.ts';
import { Field } from '../../ui/field.tsx';
import { Note } from '../../ui/note.tsx';
import { SelectField } from '../../ui/select-field.tsx';
import { type ObservationForm as Form, emptyObservation, observationFormOf, observationOf } from './observation-draft.ts';
import { PhotoPick } from './photo-pick.tsx';
import { useObserving } from './use-observing.ts';

interface ObservationFormProps {
  /** Absent for a new one. */
  readonly seen?: Observation | undefined;
  readonly state: State;
  /** The part a new one is of; left out, one of the belly is chosen. */
  readonly part?: ObservedPart | undefined;
  readonly onClose: () => void;
}

/** What was seen of the board, bridge or plate: kept, or corrected. Half-filled it stays on the device. */
export function ObservationForm({ seen, state, part: asked, onClose }: ObservationFormProps) {
  const say = useSay();
  const locale = useLocale();
  const { id, cycle, compass } = usePiano();
  const observing = useObserving();
  const { draft, set, errorOf, submit } = useDraftForm({
    name: `seen.${id}.${seen?.id ?? `new.${String(cycle)}${asked === undefined ? '' : `.${asked}`}`}`,
    base: (): Form => (seen === undefined ? { ...emptyObservation, ...(asked === undefined ? {} : { part: asked, fault: 'worn' }) } : observationFormOf(seen, compass, locale)),
    stated: (typed) => observationOf(typed, { compass, locale, cycle, state }),
    onState: (stated, drop) => {
      const onKept = (): void => { drop(); onClose(); };
      observing.mutate(seen === undefined ? { kind: 'add', draft: stated, onKept } : { kind: 'change', id: seen.id, draft: stated, onKept });
    },
  });
  const { typed: form, change } = draft;
  const parts = asked !== undefined || !isOfBelly(form.part) ? observedParts : bellyParts;
  return (
    <form className="panel" onSubmit={submit} noValidate aria-labelledby="seen-form">
      <h3 id="seen-form">{say(seen === undefined ? 'belly.seen.add' : 'belly.seen.correct')}</h3>
      {draft.isTakenUp && <TakenUp />}
      <div className="fields">
        <SelectField label={say('observation.field.part')} value={form.part} options={parts.map((value) => ({ value, label: say(`observation.part.${value}`) }))} onChange={(part) => { set({ part }); }} />
        <SelectField label={say('observation.field.fault')} value={form.fault} options={observedFaults.map((value) => ({ value, label: say(`observation.fault.${value}`) }))} onChange={(fault) => { set({ fault }); }} />
        <SelectField label={say('observation.field.severity')} value={form.severity} options={(['none', ...severities] as const).map((value) => ({ value, label: say(`observation.severity.${value}`) }))} onChange={(severity) => { set({ severity }); }} />
        <Field label={say('observation.field.fromKey')} value={form.fromKey} error={errorOf('fromKey')} hint={say('belly.seen.keyHint')} onChange={(fromKey) => { set({ fromKey }); }} />
        <Field label={say('observation.field.toKey')} value={form.toKey} error={errorOf('toKey')} onChange={(toKey) => { set({ toKey }); }} />
        <Field label={`${say('observation.field.lengthMm')} (mm)`} inputMode="decimal" value={form.length} error={errorOf('lengthMm')} onChange={(length) => { set({ length }); }} />
      </div>
      <Field label={say('observation.field.remark')} value={form.remark} lines={3} maxLength={4000} onChange={(remark) => { set({ remark }); }} />
      <PhotoPick
        photos={form.photos}
        onAdd={(photo) => { change((now) => (now.photos.some(({ hash }) => hash === photo.hash) ? now : { ...now, photos: [...now.photos, photo] })); }}
        onRemove={(photo) => { change((now) => ({ ...now, photos: now.photos.filter(({ hash }) => hash !== photo.hash) })); }}
      />
      {observing.error !== null && (isOffline(observing.error) ? <Note tone="bad" role="alert"><p>{say('belly.seen.offline')}</p></Note> : <ProblemNote problem={observing.error} />)}
      <div className="row">
        <button type="submit" className="button button-main" disabled={observing.isPending}>{say('belly.seen.keep')}</button>
        <button type="button" className="button" onClick={() => { draft.drop(); onClose(); }}>{say('action.intent.cancel')}</button>
      </div>
    </form>
  );
}

/** True for a part of the belly, whose page has a list of its own. */
export const isOfBelly = (part: ObservedPart): boolean => bellyParts.some((one) => one === part);

const isOffline = (failure: Error): boolean => failure instanceof ApiProblem && failure.status === 0;
