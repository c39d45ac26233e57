import { useId } from 'react';
import './field.css';

interface DayFieldProps {
  readonly label: string;
  /** `YYYY-MM-DD`, or empty for a day not stated. */
  readonly value: string;
  readonly onChange: (day: string) => void;
  readonly hint: string;
}

/** A day of the calendar, in the browser's own field; empty means not stated. */
export function DayField({ label, value, onChange, hint }: DayFieldProps) {
  const id = useId();
  return (
    <div className="field">
      <div className="field-head">
        <label htmlFor={id}>{label}</label>
      </div>
      <input id={id} className="input" type="date" value={value} min="1700-01-01" max="9999-12-31" aria-describedby={`${id}-said`} onChange={(event) => { onChange(event.target.value); }} />
      <div id={`${id}-said`} className="field-said">{hint}</div>
    </div>
  );
}
