import { type ReactNode, useId } from 'react';
import './field.css';

interface ChoiceProps<T extends string> {
  readonly label: string;
  readonly value: T;
  readonly options: readonly { readonly value: T; readonly label: ReactNode }[];
  readonly onChange: (value: T) => void;
  readonly hint?: string;
}

/** One of a few, all in view: arrows move within it as in any group of radio buttons. */
export function Choice<T extends string>({ label, value, options, onChange, hint }: ChoiceProps<T>) {
  const name = useId();
  return (
    <fieldset className="choice">
      <legend>{label}</legend>
      <div className="choice-row">
        {options.map((option) => (
          <label key={option.value}>
            <input type="radio" name={name} value={option.value} checked={option.value === value} onChange={() => { onChange(option.value); }} />
            {option.label}
          </label>
        ))}
      </div>
      {hint !== undefined && <p className="field-said">{hint}</p>}
    </fieldset>
  );
}
