import { useSay } from '../language/use-say.ts';
import { Choice } from '../ui/choice.tsx';
import { Field } from '../ui/field.tsx';
import type { RoomPart } from './room-part.ts';

const WAYS = ['none', 'power', 'reading'] as const;
type Name = 'powerDb' | 'levelDb' | 'distanceMm' | 'playerMm' | 'listenerMm' | 'hoursADay';

/** How loud the piano is and how far its hearers are; without a power or a reading nothing is said of it. */
export function LoudnessFields({ form, set, errorOf }: RoomPart) {
  const say = useSay();
  const figure = (name: Name, hint?: string) => <Field key={name} label={say(`room.field.${name}`)} value={form[name]} inputMode="text" error={errorOf(name)} hint={hint} onChange={(typed) => { set({ [name]: typed }); }} />;
  return (
    <fieldset className="room-set">
      <legend>{say('room.loudness')}</legend>
      <Choice label={say('room.loudness.how')} value={form.loudness} options={WAYS.map((value) => ({ value, label: say(`room.loudness.${value}`) }))} onChange={(loudness) => { set({ loudness }); }} />
      {form.loudness !== 'none' && (
        <div className="fields">
          {form.loudness === 'power' ? figure('powerDb', say('room.hint.power')) : [figure('levelDb'), figure('distanceMm')]}
          {figure('playerMm', say('room.hint.player'))}
          {figure('listenerMm', say('room.hint.listener'))}
          {figure('hoursADay')}
        </div>
      )}
      <Field label={say('room.field.remark')} value={form.remark} lines={2} maxLength={4000} onChange={(remark) => { set({ remark }); }} />
    </fieldset>
  );
}
