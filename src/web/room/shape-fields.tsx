import { roomUses } from '#room';
import { useSay } from '../language/use-say.ts';
import { Choice } from '../ui/choice.tsx';
import { Field } from '../ui/field.tsx';
import { SelectField } from '../ui/select-field.tsx';
import { KEPT_STANDARD, standardChoice } from './room-draft.ts';
import type { RoomPart } from './room-part.ts';

const SHAPES = ['box', 'points'] as const;

/** Name, size and plan of the room, its air, and what it is to be good for. */
export function ShapeFields({ form, set, errorOf, standards, kept }: RoomPart) {
  const say = useSay();
  const aims = [
    ...['', ...roomUses].map((value) => ({ value, label: value === '' ? say('room.notStated') : say(`room.use.${value as 'music'}`) })),
    ...(kept === null ? [] : [{ value: KEPT_STANDARD, label: say('standard.kept', { name: kept.name }) }]),
    ...standards.map((one) => ({ value: standardChoice(one), label: say('standard.choice', { name: one.name }) })),
  ];
  const figure = (name: 'lengthMm' | 'widthMm' | 'heightMm' | 'temperatureC' | 'humidityPct', hint?: string) =>
    <Field label={say(`room.field.${name}`)} value={form[name]} inputMode="text" error={errorOf(name)} hint={hint} onChange={(typed) => { set({ [name]: typed }); }} />;
  return (
    <>
      <Field label={say('room.field.name')} value={form.name} maxLength={120} required error={errorOf('name')} onChange={(name) => { set({ name }); }} />
      <Choice label={say('room.field.plan')} value={form.shape} options={SHAPES.map((value) => ({ value, label: say(`room.shape.${value}`) }))} onChange={(shape) => { set({ shape }); }} />
      <div className="fields">
        {form.shape === 'box' && figure('lengthMm', say('room.hint.size'))}
        {form.shape === 'box' && figure('widthMm')}
        {form.shape === 'points' && <Field label={say('room.field.points')} value={form.points} lines={5} error={errorOf('points')} hint={say('room.hint.points')} onChange={(points) => { set({ points }); }} />}
        {figure('heightMm', say('room.hint.height'))}
        <SelectField label={say('room.field.use')} value={form.use} options={aims} hint={say('room.hint.use')} error={errorOf('use')} onChange={(use) => { set({ use }); }} />
        {figure('temperatureC')}
        {figure('humidityPct')}
        <Field label={say('room.field.people')} value={form.people} inputMode="numeric" error={errorOf('people')} hint={say('room.hint.people')} onChange={(people) => { set({ people }); }} />
      </div>
    </>
  );
}
