import { type ReactNode, useId } from 'react';
import './field.css';

interface SelectFieldProps<T extends string> {
  readonly label: string;
  readonly value: T;
  readonly options: readonly { readonly value: T; readonly label: string }[];
  readonly onChange: (value: T) => void;
  readonly help?: ReactNode;
  readonly hint?: string;
  readonly error?: string | undefined;
}

/** One of many, in the device's own list. */
export function SelectField<T extends string>({ label, value, options, onChange, help, hint, error }: SelectFieldProps<T>) {
  const id = useId();
  const said = error ?? hint;
  return (
    <div className="field">
      <div className="field-head">
        <label htmlFor={id}>{label}</label>
        {help}
      </div>
      <select id={id} className="select" value={value} aria-invalid={error === undefined ? undefined : true} aria-describedby={said === undefined ? undefined : `${id}-said`} onChange={(event) => { onChange(event.target.value as T); }}>
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.label}
          </option>
        ))}
      </select>
      {said !== undefined && (
        <div id={`${id}-said`} className="field-said">
          {error === undefined ? said : <span className="field-error">{said}</span>}
        </div>
      )}
    </div>
  );
}
