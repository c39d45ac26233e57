import { loanGrades, loanParts } from '#workshop';
import { PhotoPick } from '../belly/observations/photo-pick.tsx';
import { useSay } from '../language/use-say.ts';
import { DayField } from '../ui/day-field.tsx';
import { Field } from '../ui/field.tsx';
import type { ConditionForm } from './card-form.ts';

interface ConditionFieldsProps {
  readonly side: 'before' | 'after';
  readonly form: ConditionForm;
  readonly errorOf: (path: string) => string | undefined;
  readonly onChange: (turn: (form: ConditionForm) => ConditionForm) => void;
}

/** The condition sheet of a piano on loan, part by part, with photos. */
export function ConditionFields({ side, form, errorOf, onChange }: ConditionFieldsProps) {
  const say = useSay();
  const set = (part: Partial<ConditionForm>): void => { onChange((now) => ({ ...now, ...part })); };
  return (
    <details className="condition" open={form.on !== '' || errorOf(`${side}.on`) !== undefined}>
      <summary>{say(`shop.field.${side}`)}</summary>
      <p className="soft small">{say('shop.condition.hint')}</p>
      <div className="fields">
        <DayField label={say('shop.condition.on')} value={form.on} hint={say('shop.hint.dayNeeded')} error={errorOf(`${side}.on`)} onChange={(on) => { set({ on }); }} />
        <Field label={say('shop.condition.a4Hz')} value={form.a4} inputMode="decimal" error={errorOf(`${side}.a4Hz`)} onChange={(a4) => { set({ a4 }); }} />
        <Field label={say('shop.condition.humidityPct')} value={form.humidity} inputMode="decimal" error={errorOf(`${side}.humidityPct`)} onChange={(humidity) => { set({ humidity }); }} />
      </div>
      <ul className="condition-parts">
        {loanParts.map((part) => (
          <li key={part}>
            <label>
              <span>{say(`shop.part.${part}`)}</span>
              <select className="select" value={form.grades[part] ?? ''} aria-invalid={errorOf(`${side}.${part}`) === undefined ? undefined : true} onChange={(event) => { const grade = event.target.value; onChange((now) => ({ ...now, grades: { ...now.grades, [part]: grade } })); }}>
                <option value="">{say('shop.grade.none')}</option>
                {loanGrades.map((grade) => <option key={grade} value={grade}>{say(`shop.grade.${grade}`)}</option>)}
              </select>
            </label>
            <input className="input" type="text" maxLength={1000} aria-label={say('shop.condition.words', { part: say(`shop.part.${part}`) })} value={form.words[part] ?? ''} onChange={(event) => { const words = event.target.value; onChange((now) => ({ ...now, words: { ...now.words, [part]: words } })); }} />
            {errorOf(`${side}.${part}`) !== undefined && <span className="field-error field-said">{errorOf(`${side}.${part}`)}</span>}
          </li>
        ))}
      </ul>
      <PhotoPick
        photos={form.photos}
        onAdd={(photo) => { onChange((now) => (now.photos.some(({ hash }) => hash === photo.hash) ? now : { ...now, photos: [...now.photos, photo] })); }}
        onRemove={(photo) => { onChange((now) => ({ ...now, photos: now.photos.filter(({ hash }) => hash !== photo.hash) })); }}
      />
    </details>
  );
}
