import { type State, noteNameOf } from '#instrument';
import { useCallback, useSyncExternalStore } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { useSay } from '../../language/use-say.ts';
import { type SheetRow, cellIdOf } from '../sheet/sheet-row.ts';
import { useDesk } from '../desk.tsx';
import { useRow } from '../sheet/use-sheet.ts';
import type { Words } from '../use-words.ts';
import { isUnlikely } from './cell-marks.tsx';
import type { GridColumn } from './grid-columns.ts';
import type { GridDerived } from './grid-layout.ts';
import { type GridCursor, draftIdOf } from './grid-cursor.ts';

interface GridStatusProps {
  readonly id: string;
  readonly columns: readonly GridColumn[];
  readonly cursor: GridCursor;
  readonly derived: GridDerived;
  readonly words: Words;
}

/** The focused cell in words: where it is, what stands, how it was typed, how saving stands, and what is wrong or unlikely. */
export function GridStatus({ id, columns, cursor, derived, words }: GridStatusProps) {
  const say = useSay();
  const { compass } = usePiano();
  const { sheet, state } = useDesk();
  const selection = useSyncExternalStore(cursor.subscribe, cursor.selection);
  const error = useSyncExternalStore(cursor.subscribe, cursor.error);
  const drafts = useSyncExternalStore(cursor.subscribe, cursor.drafts);
  const box = useSyncExternalStore(cursor.subscribe, cursor.box);
  const key = selection.focus.row + 1;
  const column = columns[selection.focus.column] ?? columns[0];
  const row = useRow(sheet, state satisfies State, key);
  const worked = useSyncExternalStore(derived.subscribe, useCallback(() => derived.of(key), [derived, key]));
  const describe = useDescribe(words, derived.hint);
  if (column === undefined) return null;
  const cells = (box.bottom - box.top + 1) * (box.right - box.left + 1);
  const draft = drafts[draftIdOf(key, column.id)];
  const refusal = error !== '' ? error : (draft?.why ?? '');
  return (
    <div className="grid-status">
      <p id={id}>
        <strong>{say('readings.figure', { quantity: words.column(column), note: noteNameOf(compass, key) })}</strong> {describe(row, worked, column)}
        {cells > 1 && <span className="soft"> · {say('readings.grid.status.selected', { cells })}</span>}
      </p>
      <p className="grid-refusal" role="alert">{refusal !== '' && <><strong aria-hidden="true">✕ </strong>{refusal}</>}</p>
    </div>
  );
}

function useDescribe(words: Words, hint: string): (row: SheetRow, worked: ReturnType<GridDerived['of']>, column: GridColumn) => string {
  const say = useSay();
  return useCallback(
    (row, worked, column) => {
      if (column.kind === 'derived') {
        const value = worked[column.id];
        return `${value === undefined ? say('readings.grid.status.empty') : words.derived(column.id, value, true)} · ${hint}`;
      }
      const { quantity, repeat } = column;
      const cell = row.cells.get(cellIdOf(quantity, repeat));
      const { reading } = cell ?? {};
      if (cell === undefined) return say('readings.grid.status.empty');
      const value = reading === undefined ? say('readings.grid.status.empty') : reading.value === null ? words.reading(reading) : words.figure(quantity, reading.value, true);
      const plain = reading?.typed?.replace(',', '.') === String(reading?.value);
      return [
        value,
        reading?.typed != null && !plain ? say('readings.grid.status.typed', { typed: reading.typed }) : '',
        isUnlikely(reading) ? `▲ ${say('readings.grid.status.unlikely', words.range(quantity, 'plausible'))}` : '',
        row.upAboveDown && (quantity === 'upWeightG' || quantity === 'downWeightG') ? `▲ ${say('readings.grid.status.upAboveDown')}` : '',
        reading?.remark ?? '',
        say(`readings.grid.status.${cell.sync}`),
      ].filter((part) => part !== '').join(' · ');
    },
    [say, words, hint],
  );
}
