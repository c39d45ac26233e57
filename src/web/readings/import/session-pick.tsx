import type { WeighingSession } from '#instrument';
import { useState } from 'react';
import { useMoments, useSay } from '../../language/use-say.ts';
import { SelectField } from '../../ui/select-field.tsx';
import { useDesk } from '../desk.tsx';
import { SessionForm } from '../session/session-form.tsx';

/** The session the weights of a file belong to: one there is, none, or not said yet. */
export type FileSession = string | null | undefined;

interface SessionPickProps {
  readonly value: FileSession;
  readonly onPick: (session: FileSession) => void;
}

const OPEN = '';
const NONE = 'none';
const NEW = 'new';

/** Asks how the weights of a file were weighed: a session, a new one, or not stated. */
export function SessionPick({ value, onPick }: SessionPickProps) {
  const say = useSay();
  const moment = useMoments();
  const { session: { sessions } } = useDesk();
  const [isNew, setNew] = useState(false);
  const nameOf = ({ startedAt }: WeighingSession): string => say('readings.session.of', { when: moment(startedAt) });
  const take = (chosen: string): void => {
    setNew(chosen === NEW);
    onPick(chosen === OPEN || chosen === NEW ? undefined : chosen === NONE ? null : chosen);
  };
  const options = [
    { value: OPEN, label: say('readings.import.session.open') },
    ...[...sessions].reverse().map((session) => ({ value: session.id, label: nameOf(session) })),
    { value: NEW, label: say('readings.session.new') },
    { value: NONE, label: say('readings.session.prompt.skip') },
  ];
  return (
    <>
      <SelectField label={say('readings.import.session')} value={isNew ? NEW : value === undefined ? OPEN : (value ?? NONE)} options={options} onChange={take} hint={say('readings.import.session.why')} />
      {isNew && (
        <section className="import-session" aria-label={say('readings.session.new')}>
          <SessionForm session={null} cancelLabel={say('readings.session.cancel')} onCancel={() => { setNew(false); }} onDone={take} />
        </section>
      )}
    </>
  );
}
