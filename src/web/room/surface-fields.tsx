import { useCallback } from 'react';
import { useSay } from '../language/use-say.ts';
import { FaceFields } from './face-fields.tsx';
import { type FaceForm, type RoomForm, wallAt } from './room-draft.ts';
import type { RoomPart } from './room-part.ts';

/** Walls a form speaks of: four, or as many as there are corners. */
export const wallCountOf = ({ shape, points }: Pick<RoomForm, 'shape' | 'points'>): number => (shape === 'box' ? 4 : Math.min(60, Math.max(3, points.split('\n').filter((line) => line.trim() !== '').length)));

const wallsOf = (form: Pick<RoomForm, 'shape' | 'points' | 'walls'>): readonly FaceForm[] => Array.from({ length: wallCountOf(form) }, (_, index) => wallAt(form, index));

/** What floor, ceiling and each wall are made of. */
export function SurfaceFields({ form, set, errorOf }: RoomPart) {
  const say = useSay();
  const setFace = useCallback((at: string, face: FaceForm): void => {
    set((now) => (at === 'floor' || at === 'ceiling' ? { [at]: face } : { walls: wallsOf(now).map((one, index) => (String(index) === at ? face : one)) }));
  }, [set]);
  return (
    <fieldset className="room-set">
      <legend>{say('room.surfaces')}</legend>
      <div className="fields">
        <FaceFields label={say('room.side.floor')} face={form.floor} error={errorOf('floor')} at="floor" onFace={setFace} />
        <FaceFields label={say('room.side.ceiling')} face={form.ceiling} error={errorOf('ceiling')} at="ceiling" onFace={setFace} />
        {wallsOf(form).map((face, index) => (
          <FaceFields key={index} label={say('room.side.wall', { number: index + 1 })} face={face} error={errorOf(`walls[${String(index)}]`)} at={String(index)} onFace={setFace} />
        ))}
      </div>
      {errorOf('walls') !== undefined && <p className="field-error">{errorOf('walls')}</p>}
    </fieldset>
  );
}
