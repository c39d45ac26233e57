import { type ReactNode, useId } from 'react';
import './field.css';

interface SelectFieldProps<T extends string> {
  readonly label: string;
  readonly value: T;
  readonly options: readonly { readonly value: T; readonly label: string }[];
  readonly onChange: (value: T) => void;
  readonly help?: ReactNode;
  readonly hint?: string;
}

/** One of many, in the device's own list. */
export function SelectField<T extends string>({ label, value, options, onChange, help, hint }: SelectFieldProps<T>) {
  const id = useId();
  return (
    <div className="field">
      <div className="field-head">
        <label htmlFor={id}>{label}</label>
        {help}
      </div>
      <select id={id} className="select" value={value} aria-describedby={hint === undefined ? undefined : `${id}-said`} onChange={(event) => { onChange(event.target.value as T); }}>
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.label}
          </option>
        ))}
      </select>
      {hint !== undefined && (
        <div id={`${id}-said`} className="field-said">
          {hint}
        </div>
      )}
    </div>
  );
}
