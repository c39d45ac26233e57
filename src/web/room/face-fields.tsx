import { surfaceNames, surfaces } from '#materials';
import { memo } from 'react';
import { useFigures, useSay } from '../language/use-say.ts';
import { Field } from '../ui/field.tsx';
import { SelectField } from '../ui/select-field.tsx';
import type { FaceForm } from './room-draft.ts';

interface FaceFieldsProps {
  readonly label: string;
  readonly face: FaceForm;
  readonly error: string | undefined;
  /** Which face it is: told back with what it became, so that one function serves all. */
  readonly at: string;
  readonly onFace: (at: string, face: FaceForm) => void;
}

/** What a surface is made of: a row of the table, told with its shares, or six shares of its own. Drawn anew only when it became another. */
export const FaceFields = memo(function FaceFields({ label, face, error, at, onFace }: FaceFieldsProps) {
  const say = useSay();
  const figure = useFigures();
  const name = surfaceNames.find((one) => one === face.surface);
  const row = name === undefined ? undefined : surfaces[name];
  const shares = (all: readonly number[]): string => all.map((share) => figure(share, 2)).join(' · ');
  const others = row !== undefined && 'alsoGiven' in row ? row.alsoGiven : undefined;
  const told = row === undefined ? '' : say(others === undefined ? 'room.shares' : 'room.shares.differ', { shares: shares(row.absorption), others: others === undefined ? '' : shares(others) });
  return (
    <div className="room-face">
      <SelectField label={label} value={face.surface} error={row === undefined ? undefined : error} hint={told} options={[...surfaceNames, 'own' as const].map((value) => ({ value, label: say(`room.surface.${value}`) }))} onChange={(surface) => { onFace(at, { ...face, surface }); }} />
      {row === undefined && <Field label={say('room.own', { what: label })} value={face.own} inputMode="text" error={error} hint={say('room.hint.own')} onChange={(own) => { onFace(at, { ...face, own }); }} />}
    </div>
  );
});
