import { useId } from 'react';
import '../../ui/field.css';

interface OfferedFieldProps {
  readonly label: string;
  readonly value: string;
  readonly onChange: (typed: string) => void;
  /** What was typed there before, to be taken again. */
  readonly offered: readonly string[];
  readonly hint: string;
}

/** A field of free text that offers what was typed there before. */
export function OfferedField({ label, value, onChange, offered, hint }: OfferedFieldProps) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <input id={id} className="input" type="text" list={`${id}-offered`} maxLength={200} autoComplete="off" value={value} aria-describedby={`${id}-said`} onChange={(event) => { onChange(event.target.value); }} />
      <datalist id={`${id}-offered`}>{offered.map((text) => <option key={text} value={text} />)}</datalist>
      <div id={`${id}-said`} className="field-said">{hint}</div>
    </div>
  );
}
