import type { ReactNode } from 'react';
import './field.css';

interface CheckGroupProps {
  readonly label: string;
  readonly options: readonly { readonly value: string; readonly label: ReactNode }[];
  readonly chosen: readonly string[];
  /** The values chosen, in the order of the options. */
  readonly onChange: (chosen: readonly string[]) => void;
  readonly error?: string | undefined;
  /** Said below, as the choice changes. */
  readonly children?: ReactNode;
}

/** Some of a few, all in view. */
export function CheckGroup({ label, options, chosen, onChange, error, children }: CheckGroupProps) {
  const toggle = (value: string, isOn: boolean): void => {
    onChange(options.map((option) => option.value).filter((one) => (one === value ? isOn : chosen.includes(one))));
  };
  return (
    <fieldset className="choice">
      <legend>{label}</legend>
      <div className="choice-row">
        {options.map((option) => (
          <label key={option.value}>
            <input type="checkbox" checked={chosen.includes(option.value)} onChange={(event) => { toggle(option.value, event.target.checked); }} />
            {option.label}
          </label>
        ))}
      </div>
      {error !== undefined && <p className="field-said" role="alert"><span className="field-error">{error}</span></p>}
      {children}
    </fieldset>
  );
}
