import { turnsDeg } from '#room';
import { usePiano } from '../api/piano.tsx';
import { useSay } from '../language/use-say.ts';
import { Field } from '../ui/field.tsx';
import { SelectField } from '../ui/select-field.tsx';
import type { RoomPart } from './room-part.ts';

/** Where the piano stands, by its middle, and where its tail points. */
export function PianoFields({ form, set, errorOf }: RoomPart) {
  const say = useSay();
  const { instrument } = usePiano();
  const figure = (name: 'pianoLengthMm' | 'pianoXMm' | 'pianoYMm', hint?: string) =>
    <Field label={say(`room.field.${name}`)} value={form[name]} inputMode="text" error={errorOf(name)} hint={hint} onChange={(typed) => { set({ [name]: typed }); }} />;
  return (
    <fieldset className="room-set">
      <legend>{say('room.place')}</legend>
      <div className="fields">
        {figure('pianoXMm', say('room.hint.place'))}
        {figure('pianoYMm')}
        <SelectField label={say(instrument.kind === 'grand' ? 'room.field.tailDeg' : 'room.field.tailDeg.upright')} value={form.tailDeg} options={turnsDeg.map((turn) => ({ value: String(turn), label: say(`room.turn.${String(turn) as '0'}`) }))} onChange={(tailDeg) => { set({ tailDeg }); }} />
        {figure('pianoLengthMm', say(instrument.kind === 'grand' ? 'room.hint.length' : 'room.hint.depth'))}
      </div>
    </fieldset>
  );
}
