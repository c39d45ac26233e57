import type { WeighingSession } from '#instrument';
import { explainIssue } from '#text';
import { type SyntheticEvent, useState } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { call } from '../../api/client.ts';
import { refreshPiano } from '../../api/queries.ts';
import { useDraft } from '../../kept/draft.ts';
import { useLocale, useSay } from '../../language/use-say.ts';
import { Choice } from '../../ui/choice.tsx';
import { DayField } from '../../ui/day-field.tsx';
import { TakenUp } from '../../kept/taken-up.tsx';
import { Field } from '../../ui/field.tsx';
import { Note } from '../../ui/note.tsx';
import { noteWritten } from '../../undo/undo.ts';
import { useDesk } from '../desk.tsx';
import { wholeNumber } from '../grid/grid-block.ts';
import { type DraftResult, type SessionChoiceName, type SessionForm as Form, draftOf, formOf, sessionChoices } from './session-draft.ts';

interface SessionFormProps {
  /** The session to change; null opens a new one. */
  readonly session: WeighingSession | null;
  readonly onDone: (id: string) => void;
  readonly onCancel: () => void;
  readonly cancelLabel: string;
}

const columns = [
  ['placeOnKeyMm', 'mm'], ['stepG', 'g'], ['weightClass', ''], ['repeatabilityG', 'g'], ['repeats', ''], ['temperatureC', '°C'], ['humidityPct', '%'], ['equipment', ''],
] as const;

/** How the weights of one sitting are taken. Everything may stay open; help stands beside every field. */
export function SessionForm({ session, onDone, onCancel, cancelLabel }: SessionFormProps) {
  const say = useSay();
  const locale = useLocale();
  const { id, cycle } = usePiano();
  const { state } = useDesk();
  const { typed: form, change, drop, isTakenUp } = useDraft<Form>(`session.${id}.${String(cycle)}.${state}.${session?.id ?? 'new'}`, () => formOf(session, (value) => wholeNumber(value, locale)));
  const [tried, setTried] = useState<DraftResult>();
  const [trouble, setTrouble] = useState('');
  const [isSaving, setSaving] = useState(false);
  const set = (name: keyof Form) => (value: string): void => { change((now) => ({ ...now, [name]: value })); };

  const submit = async (event: SyntheticEvent): Promise<void> => {
    event.preventDefault();
    if (!(event.currentTarget as HTMLFormElement).reportValidity()) return;
    const result = draftOf(form, { cycle, state, locale });
    setTried(result);
    if (!result.ok) return;
    setSaving(true);
    try {
      const kept = session === null
        ? await call('addSession', { params: { id }, body: result.draft })
        : await call('changeSession', { params: { id, sid: session.id }, body: result.draft });
      drop();
      await refreshPiano(id);
      void noteWritten(id, kept.id).catch(() => undefined);
      onDone(kept.id);
    } catch (failure) {
      setTrouble(failure instanceof Error ? failure.message : String(failure));
      setSaving(false);
    }
  };
  const errorOf = (name: keyof Form): string | undefined => {
    const issue = tried?.ok === false ? tried.issues[name as keyof typeof tried.issues] : undefined;
    return issue === undefined ? undefined : explainIssue(say, issue, locale);
  };
  return (
    <form className="session-form" onSubmit={(event) => void submit(event)} noValidate>
      <p className="soft">{say('readings.session.intro')}</p>
      {isTakenUp && <TakenUp />}
      <div className="fields">
        <DayField label={say('readings.session.weighedOn')} value={form.weighedOn} onChange={set('weighedOn')} hint={say('readings.session.weighedOn.help')} />
        {columns.map(([name, unit]) => (
          <Field
            key={name}
            label={unit === '' ? say(`readings.session.${name}`) : `${say(`readings.session.${name}`)}, ${unit}`}
            value={form[name]}
            onChange={set(name)}
            hint={say(`readings.session.${name}.help`)}
            error={errorOf(name)}
            inputMode={name === 'equipment' || name === 'weightClass' ? 'text' : name === 'repeats' ? 'numeric' : 'decimal'}
            maxLength={name === 'equipment' ? 400 : 40}
          />
        ))}
      </div>
      {(Object.keys(sessionChoices) as SessionChoiceName[]).map((name) => (
        <Choice
          key={name}
          label={say(`readings.session.${name}`)}
          value={form[name]}
          hint={say(`readings.session.${name}.help`)}
          options={[{ value: '', label: say('readings.session.notStated') }, ...optionsOf(name, say)]}
          onChange={set(name)}
        />
      ))}
      <Field label={say('readings.session.remark')} value={form.remark} onChange={set('remark')} hint={say('readings.session.remark.help')} lines={2} maxLength={2000} />
      {trouble !== '' && <Note tone="bad" role="alert">{say('readings.session.notKept', { why: trouble })}</Note>}
      <div className="dialog-foot">
        <button type="button" className="button" onClick={() => { drop(); onCancel(); }}>{cancelLabel}</button>
        <button type="submit" className="button button-main" disabled={isSaving}>{say(session === null ? 'readings.session.start' : 'readings.session.save')}</button>
      </div>
    </form>
  );
}

function optionsOf(name: SessionChoiceName, say: ReturnType<typeof useSay>): readonly { readonly value: string; readonly label: string }[] {
  switch (name) {
    case 'rule': return sessionChoices.rule.map((value) => ({ value, label: say(`readings.session.rule.${value}`) }));
    case 'dampers': return sessionChoices.dampers.map((value) => ({ value, label: say(`readings.session.dampers.${value}`) }));
    case 'helperSprings': return sessionChoices.helperSprings.map((value) => ({ value, label: say(`readings.session.helperSprings.${value}`) }));
    case 'regulated': return sessionChoices.regulated.map((value) => ({ value, label: say(`readings.session.regulated.${value}`) }));
  }
}
