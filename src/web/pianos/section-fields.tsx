import { useSay } from '../language/use-say.ts';
import { Field } from '../ui/field.tsx';
import { MOST_SECTIONS, type SectionForm } from './piano-form.ts';

interface SectionFieldsProps {
  readonly sections: readonly SectionForm[];
  readonly error: (path: string) => string | undefined;
  readonly onChange: (sections: readonly SectionForm[]) => void;
}

/** The sections of the stringing, bass to treble: each from its first key to its last, breaks between. */
export function SectionFields({ sections, error, onChange }: SectionFieldsProps) {
  const say = useSay();
  const change = (index: number, part: Partial<SectionForm>): void => {
    onChange(sections.map((section, place) => (place === index ? { ...section, ...part } : section)));
  };
  const add = (): void => {
    const before = sections.at(-1)?.last.trim() ?? '0';
    const first = /^\d+$/u.test(before) ? String(Number(before) + 1) : '';
    onChange([...sections, { name: '', first, last: '' }]);
  };
  return (
    <fieldset className="choice">
      <legend>{say('pianos.field.sections')}</legend>
      <p className="field-said">{say('pianos.sections.hint')}</p>
      <ol className="sections">
        {sections.map((section, index) => {
          const path = `sections[${String(index)}]`;
          return (
            <li key={index}>
              <Field label={say('pianos.section.name')} value={section.name} error={error(`${path}.name`)} maxLength={40} onChange={(name) => { change(index, { name }); }} />
              <Field label={say('pianos.section.first')} value={section.first} error={error(`${path}.firstKey`)} maxLength={6} onChange={(first) => { change(index, { first }); }} />
              <Field label={say('pianos.section.last')} value={section.last} error={error(`${path}.lastKey`)} maxLength={6} onChange={(last) => { change(index, { last }); }} />
              <button type="button" className="button button-quiet" aria-label={say('pianos.section.removeThis', { number: index + 1, name: section.name })} onClick={() => { onChange(sections.filter((_, place) => place !== index)); }}>
                {say('pianos.section.remove')}
              </button>
            </li>
          );
        })}
      </ol>
      {sections.length < MOST_SECTIONS && <button type="button" className="button" onClick={add}>{say('pianos.section.add')}</button>}
    </fieldset>
  );
}
