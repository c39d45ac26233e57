import { useLayoutEffect, useRef, useSyncExternalStore } from 'react';
import type { GridCursor } from './grid-cursor.ts';

interface CellEditorProps {
  readonly cursor: GridCursor;
  readonly label: string;
  readonly statusId: string;
}

/** The text of the cell being edited. The browser keeps it while it is typed; nothing is rendered until it is taken. */
export function CellEditor({ cursor, label, statusId }: CellEditorProps) {
  const input = useRef<HTMLInputElement>(null);
  const error = useSyncExternalStore(cursor.subscribe, cursor.error);
  useLayoutEffect(() => {
    input.current?.focus({ preventScroll: true });
    input.current?.select();
  }, []);
  return (
    <input
      ref={input}
      className="cell-input"
      type="text"
      inputMode="decimal"
      autoComplete="off"
      spellCheck={false}
      defaultValue={cursor.initialText() ?? ''}
      aria-label={label}
      aria-describedby={statusId}
      aria-invalid={error !== '' || undefined}
      onInput={() => { cursor.refuse(''); }}
    />
  );
}
