import { type ReactNode, type Ref, useId } from 'react';
import './field.css';

interface FieldProps {
  readonly label: string;
  readonly value: string;
  readonly onChange: (typed: string) => void;
  /** What was understood of the typed text, said back. */
  readonly echo?: string | undefined;
  readonly error?: string | undefined;
  readonly warning?: string | undefined;
  readonly hint?: string | undefined;
  /** Help to stand beside the label. */
  readonly help?: ReactNode;
  readonly inputMode?: 'text' | 'decimal' | 'numeric';
  readonly required?: boolean;
  readonly lines?: number;
  readonly maxLength?: number;
  readonly width?: string;
  readonly inputRef?: Ref<HTMLInputElement>;
  readonly onBlur?: () => void;
}

/** A labelled field of typed text; figures too are typed text until understood. */
export function Field({ label, value, onChange, echo, error, warning, hint, help, inputMode = 'text', required = false, lines = 1, maxLength, width, inputRef, onBlur }: FieldProps) {
  const id = useId();
  const said = [hint, echo, warning, error].some((text) => text !== undefined && text !== '');
  const shared = {
    id,
    value,
    maxLength,
    required,
    'aria-invalid': error === undefined ? undefined : true,
    'aria-describedby': said ? `${id}-said` : undefined,
    onBlur,
  } as const;
  return (
    <div className="field" style={width === undefined ? undefined : { maxWidth: width }}>
      <div className="field-head">
        <label htmlFor={id}>{label}</label>
        {help}
      </div>
      {lines > 1 ? (
        <textarea {...shared} className="input" rows={lines} onChange={(event) => { onChange(event.target.value); }} />
      ) : (
        <input {...shared} ref={inputRef} className="input" type="text" inputMode={inputMode} autoComplete="off" spellCheck={inputMode === 'text'} onChange={(event) => { onChange(event.target.value); }} />
      )}
      <div id={`${id}-said`} className="field-said" aria-live="polite">
        {error !== undefined ? <span className="field-error">{error}</span> : warning !== undefined ? <span className="field-warning">{warning}</span> : (echo ?? hint)}
      </div>
    </div>
  );
}
