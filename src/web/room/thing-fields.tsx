import { sideWords } from '#report';
import { useCallback } from 'react';
import { useSay } from '../language/use-say.ts';
import { Field } from '../ui/field.tsx';
import { SelectField } from '../ui/select-field.tsx';
import { FaceFields } from './face-fields.tsx';
import type { FaceForm, ThingForm } from './room-draft.ts';
import type { RoomPart } from './room-part.ts';
import { wallCountOf } from './surface-fields.tsx';

const NEW: ThingForm = { words: '', surface: 'carpet-on-felt', own: '', areaM2: '', on: 'floor' };

/** Windows, doors, rugs, curtains, seats: what covers a part of a side. */
export function ThingFields({ form, set, errorOf }: RoomPart) {
  const say = useSay();
  const sides = ['floor', 'ceiling', ...Array.from({ length: wallCountOf(form) }, (_, index) => String(index + 1))];
  const setThing = useCallback((index: number, part: Partial<ThingForm>): void => { set(({ things }) => ({ things: things.map((one, at) => (at === index ? { ...one, ...part } : one)) })); }, [set]);
  const setFace = useCallback((at: string, { surface, own }: FaceForm): void => { setThing(Number(at), { surface, own }); }, [setThing]);
  return (
    <fieldset className="room-set">
      <legend>{say('room.things')}</legend>
      <p className="soft small">{say('room.things.about')}</p>
      {form.things.map((thing, index) => {
        const what = thing.words === '' ? say('room.thing.number', { number: index + 1 }) : thing.words;
        return (
          <div key={index} className="room-thing" role="group" aria-label={what}>
            <Field label={say('room.thing.words')} value={thing.words} maxLength={120} onChange={(words) => { setThing(index, { words }); }} />
            <FaceFields label={say('room.thing.made')} face={thing} error={errorOf(`things[${String(index)}]`)} at={String(index)} onFace={setFace} />
            <Field label={say('room.thing.area')} value={thing.areaM2} inputMode="decimal" error={errorOf(`things[${String(index)}].areaM2`)} onChange={(areaM2) => { setThing(index, { areaM2 }); }} />
            <SelectField label={say('room.thing.on')} value={thing.on} error={errorOf(`things[${String(index)}].on`)} options={(sides.includes(thing.on) ? sides : [...sides, thing.on]).map((value) => ({ value, label: sideWords(value, say) }))} onChange={(on) => { setThing(index, { on }); }} />
            <button type="button" className="button button-quiet" aria-label={say('room.thing.remove', { what })} onClick={() => { set(({ things }) => ({ things: things.filter((_, at) => at !== index) })); }}>{say('room.remove')}</button>
          </div>
        );
      })}
      <div><button type="button" className="button" onClick={() => { set(({ things }) => ({ things: [...things, NEW] })); }}>{say('room.thing.add')}</button></div>
    </fieldset>
  );
}
