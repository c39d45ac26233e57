import { useId } from 'react';
import './field.css';

interface DayFieldProps {
  readonly label: string;
  /** `YYYY-MM-DD`, with a clock `YYYY-MM-DDTHH:MM`, or empty for what is not stated. */
  readonly value: string;
  readonly onChange: (day: string) => void;
  readonly hint: string;
  readonly error?: string | undefined;
  readonly hasClock?: boolean;
}

/** A day of the calendar, in the browser's own field, with the time of day where one is asked for; empty means not stated. */
export function DayField({ label, value, onChange, hint, error, hasClock = false }: DayFieldProps) {
  const id = useId();
  const [type, end] = hasClock ? ['datetime-local', 'T00:00'] as const : ['date', ''] as const;
  return (
    <div className="field">
      <div className="field-head">
        <label htmlFor={id}>{label}</label>
      </div>
      <input id={id} className="input" type={type} value={value} min={`1700-01-01${end}`} max={`9999-12-31${end}`} aria-invalid={error === undefined ? undefined : true} aria-describedby={`${id}-said`} onChange={(event) => { onChange(event.target.value); }} />
      <div id={`${id}-said`} className="field-said" aria-live="polite">{error === undefined ? hint : <span className="field-error">{error}</span>}</div>
    </div>
  );
}
