import { type QuantityName, type Reading, quantityOf } from '#instrument';
import { useId, useRef, useState } from 'react';
import { useLocale, useSay } from '../../language/use-say.ts';
import { useDesk } from '../desk.tsx';
import { takeText } from '../grid/grid-commands.ts';
import { isUnlikely } from '../grid/cell-marks.tsx';
import { cellIdOf } from '../sheet/sheet-row.ts';
import { useCell } from '../sheet/use-sheet.ts';
import { useWords } from '../use-words.ts';

interface ArmFieldProps {
  readonly quantity: QuantityName;
  readonly scope: Reading['scope'];
  readonly index: number;
  readonly label: string;
}

/** One figure that is not of a key: taken on Enter or when the field is left, Esc brings back what stood. */
export function ArmField({ quantity, scope, index, label }: ArmFieldProps) {
  const say = useSay();
  const locale = useLocale();
  const words = useWords();
  const id = useId();
  const { sheet, state, write, canWrite } = useDesk();
  const cell = useCell(sheet, state, { scope, index, id: cellIdOf(quantity, 1) });
  const standing = cell?.reading;
  const shown = standing === undefined ? '' : (standing.typed ?? words.reading(standing));
  const [draft, setDraft] = useState<string>();
  const [refused, setRefused] = useState('');
  const restored = useRef(false);
  const column = { kind: 'figure', id: quantity, quantity, repeat: 1, repeats: 1 } as const;
  const take = (): void => {
    if (draft === undefined || restored.current) return;
    const taken = takeText(draft, { key: index, column, standing, say, locale, words });
    if (taken.kind === 'refused') {
      setRefused(taken.why);
      return;
    }
    if (taken.kind === 'write') {
      const { key, ...rest } = taken.write;
      write([{ ...rest, index: key }]);
    }
    setDraft(undefined);
    setRefused('');
  };
  const unlikely = isUnlikely(standing) ? `▲ ${say('readings.unlikely', words.range(quantity, 'plausible'))}` : '';
  const read = standing?.value == null || standing.typed === null || /^[\d.,]+$/u.test(standing.typed) ? '' : words.figure(quantity, standing.value, true);
  return (
    <span className="arm-field">
      <input
        className="input"
        type="text"
        inputMode="decimal"
        autoComplete="off"
        aria-label={`${label}, ${quantityOf(quantity).unit}`}
        aria-describedby={id}
        aria-invalid={refused !== '' || undefined}
        readOnly={!canWrite}
        value={draft ?? shown}
        onChange={(event) => { restored.current = false; setDraft(event.target.value); }}
        onBlur={take}
        onKeyDown={(event) => {
          if (event.key === 'Enter') take();
          if (event.key !== 'Escape') return;
          restored.current = true;
          setDraft(undefined);
          setRefused('');
        }}
      />
      <span id={id} className="field-said" aria-live="polite">
        {refused !== '' ? <span className="field-error">✕ {refused}</span> : unlikely !== '' ? <span className="field-warning">{unlikely}</span> : read}
        {cell !== undefined && cell.sync !== 'kept' && ` ${say(`readings.grid.status.${cell.sync}`)}`}
      </span>
    </span>
  );
}
