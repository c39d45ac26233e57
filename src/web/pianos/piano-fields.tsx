import { parseMeasure } from '#units';
import { useFigures, useLocale, useSay } from '../language/use-say.ts';
import { Choice } from '../ui/choice.tsx';
import { Field } from '../ui/field.tsx';
import { SectionFields } from './section-fields.tsx';
import type { CompassChoice, PianoForm } from './piano-form.ts';

interface PianoFieldsProps {
  readonly typed: PianoForm;
  readonly onChange: (typed: PianoForm) => void;
  /** What is wrong with a field, in words. */
  readonly errorOf: (path: string) => string | undefined;
}

/** The fields of a piano's card. */
export function PianoFields({ typed, onChange, errorOf }: PianoFieldsProps) {
  const say = useSay();
  const locale = useLocale();
  const figure = useFigures();
  const text = (field: Exclude<keyof PianoForm, 'sections'>) => ({ value: typed[field], onChange: (value: string) => { onChange({ ...typed, [field]: value }); } });
  const echo = (value: string, unit: 'mm' | 'Hz'): string | undefined => {
    const parsed = parseMeasure(value, { unit, locale });
    return parsed.ok && parsed.value.converted ? say('pianos.understood', { figure: figure(parsed.value.value, 1, unit) }) : undefined;
  };
  return (
    <>
      <Field label={say('pianos.field.name')} {...text('name')} error={errorOf('name')} hint={say('pianos.field.name.hint')} required maxLength={120} />
      <div className="fields">
        <Choice
          label={say('pianos.field.kind')}
          value={typed.kind}
          options={[{ value: 'grand', label: say('pianos.kind.grand') }, { value: 'upright', label: say('pianos.kind.upright') }]}
          onChange={(kind) => { onChange({ ...typed, kind }); }}
        />
        <Choice<CompassChoice>
          label={say('pianos.field.compass')}
          value={typed.compass}
          options={[{ value: '88', label: say('pianos.compass.88') }, { value: '85', label: say('pianos.compass.85') }, { value: 'other', label: say('pianos.compass.other') }]}
          onChange={(compass) => { onChange({ ...typed, compass }); }}
        />
      </div>
      {typed.compass === 'other' && (
        <div className="fields">
          <Field label={say('pianos.field.firstMidi')} {...text('firstNote')} error={errorOf('firstMidi')} hint={say('pianos.field.note.hint')} maxLength={6} />
          <Field label={say('pianos.field.lastMidi')} {...text('lastNote')} error={errorOf('lastMidi')} hint={say('pianos.field.note.hint')} maxLength={6} />
        </div>
      )}
      <div className="fields">
        <Field label={say('pianos.field.maker')} {...text('maker')} error={errorOf('maker')} maxLength={120} />
        <Field label={say('pianos.field.serial')} {...text('serial')} error={errorOf('serial')} maxLength={60} />
        <Field label={say('pianos.field.year')} {...text('year')} error={errorOf('year')} inputMode="numeric" maxLength={4} />
        <Field label={say('pianos.field.lengthMm')} {...text('length')} error={errorOf('lengthMm')} echo={echo(typed.length, 'mm')} hint={say('pianos.field.length.hint')} inputMode="decimal" />
        <Field label={say('pianos.field.a4Hz')} {...text('pitch')} error={errorOf('a4Hz')} echo={echo(typed.pitch, 'Hz')} hint={say('pianos.field.pitch.hint')} inputMode="decimal" />
      </div>
      <SectionFields sections={typed.sections} error={errorOf} onChange={(sections) => { onChange({ ...typed, sections }); }} />
      <Field label={say('pianos.field.remark')} {...text('remark')} error={errorOf('remark')} lines={2} maxLength={4000} />
    </>
  );
}
