import { useMemo, useRef, useState } from 'react';
import { type Command, useCommands } from '../commands/registry.ts';
import { useSay } from '../language/use-say.ts';
import { ProblemNote } from '../shell/problem-note.tsx';
import { Field } from '../ui/field.tsx';
import { SelectField } from '../ui/select-field.tsx';
import { useSettled } from '../ui/use-settled.ts';
import { EventDays } from './event-days.tsx';
import { EventPages } from './event-pages.tsx';
import { sayWhat } from './say-what.ts';
import { countsOf, useEventDays } from './use-event-days.ts';

/** Everything that was written, folded by stay and day, or only what is looked for. */
export function EventLog() {
  const say = useSay();
  const { days, error, refetch } = useEventDays();
  const [typed, setTyped] = useState('');
  const [what, setWhat] = useState('');
  const words = useSettled(typed.trim());
  const field = useRef<HTMLInputElement>(null);
  const commands = useMemo((): readonly Command[] => [
    { id: 'story.find', label: 'story.events.find', group: 'command.group.piano', shortcut: '/', perform: () => { field.current?.focus(); } },
  ], []);
  useCommands(commands);
  if (error !== null) return <ProblemNote problem={error} onRetry={refetch} />;
  if (days === undefined) return <p className="soft">{say('shell.loading')}</p>;
  const kinds = [...countsOf(days)].map(([value, count]) => ({ value, label: `${sayWhat(value, say)} (${String(count)})` })).sort((a, b) => a.label.localeCompare(b.label));
  const isLooking = words !== '' || what !== '';
  return (
    <>
      <div className="fields no-print">
        <Field label={say('story.events.find')} value={typed} onChange={setTyped} hint={say('story.events.find.hint')} maxLength={200} inputRef={field} />
        <SelectField label={say('story.events.what')} value={what} options={[{ value: '', label: say('story.events.what.all') }, ...kinds]} onChange={setWhat} />
      </div>
      {isLooking ? <EventPages shown={{ ...(words === '' ? {} : { words }), ...(what === '' ? {} : { what }) }} isCounted /> : <div className="folds"><EventDays days={days} /></div>}
    </>
  );
}
