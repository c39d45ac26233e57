import { type KeyNumber, type State, colourOf, noteNameOf } from '#instrument';
import { memo, useCallback, useSyncExternalStore } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { useIsPointedKey } from '../../leaves/pointed-key.ts';
import { cellIdOf } from '../sheet/sheet-row.ts';
import type { SheetRow } from '../sheet/sheet-row.ts';
import type { Sheet } from '../sheet/sheet.ts';
import { useRow } from '../sheet/use-sheet.ts';
import type { Words } from '../use-words.ts';
import { CellEditor } from './cell-editor.tsx';
import { CellMarks } from './cell-marks.tsx';
import type { GridColumn } from './grid-columns.ts';
import type { GridDerived } from './grid-layout.ts';
import { type GridCursor, type RefusedDraft, draftIdOf } from './grid-cursor.ts';

interface GridRowProps {
  readonly rowIndex: number;
  readonly keyNumber: KeyNumber;
  readonly columns: readonly GridColumn[];
  readonly sheet: Sheet;
  readonly state: State;
  readonly cursor: GridCursor;
  readonly derived: GridDerived;
  readonly words: Words;
  readonly statusId: string;
}

/** One key of the grid. Renders when its own readings or its part in the cursor change, and not otherwise. */
export const GridRow = memo(function GridRow({ rowIndex, keyNumber, columns, sheet, state, cursor, derived, words, statusId }: GridRowProps) {
  const { compass } = usePiano();
  const row = useRow(sheet, state, keyNumber);
  const worked = useSyncExternalStore(derived.subscribe, useCallback(() => derived.of(keyNumber), [derived, keyNumber]));
  const place = useSyncExternalStore(cursor.subscribe, useCallback(() => cursor.rowCursor(rowIndex), [cursor, rowIndex]));
  const drafts = useSyncExternalStore(cursor.subscribe, cursor.drafts);
  const isPointed = useIsPointedKey(keyNumber);
  const colour = colourOf(compass, keyNumber);
  return (
    <tr role="row" aria-rowindex={rowIndex + 2} className={`key-${colour}${isPointed ? ' is-pointed' : ''}`} data-row={rowIndex}>
      <th scope="row" role="rowheader">
        <span className="key-number">{keyNumber}</span> {noteNameOf(compass, keyNumber)}
      </th>
      {columns.map((column, index) => {
        const isFocus = place.focus === index;
        const isEdited = isFocus && place.isEditing && column.kind === 'figure';
        const draft = drafts[draftIdOf(keyNumber, column.id)];
        return (
          <td
            key={column.id}
            role="gridcell"
            aria-colindex={index + 2}
            data-column={index}
            tabIndex={isFocus && !isEdited ? 0 : -1}
            className={column.kind === 'derived' ? 'is-derived' : undefined}
            aria-selected={place.focus !== undefined || place.to >= place.from ? index >= place.from && index <= place.to : false}
            {...(column.kind === 'derived' ? { 'aria-readonly': true } : {})}
            {...(isFocus ? { 'aria-describedby': statusId } : {})}
          >
            {isEdited ? <CellEditor cursor={cursor} label={`${noteNameOf(compass, keyNumber)}, ${words.column(column)}`} statusId={statusId} /> : <CellText column={column} row={row} worked={worked} draft={draft} words={words} />}
          </td>
        );
      })}
    </tr>
  );
});

function CellText({ column, row, worked, draft, words }: { readonly column: GridColumn; readonly row: SheetRow; readonly worked: ReturnType<GridDerived['of']>; readonly draft: RefusedDraft | undefined; readonly words: Words }) {
  if (column.kind === 'derived') {
    const value = worked[column.id];
    return value === undefined ? null : <span className="cell-derived">{words.derived(column.id, value)}</span>;
  }
  const cell = row.cells.get(cellIdOf(column.quantity, column.repeat));
  const isOutcome = cell?.reading?.outcome != null;
  const upAboveDown = row.upAboveDown && column.quantity === 'upWeightG';
  return (
    <>
      <CellMarks cell={cell} upAboveDown={upAboveDown} refused={draft !== undefined} />
      <span className={draft !== undefined ? 'cell-draft' : isOutcome ? 'cell-outcome' : undefined}>{draft?.text ?? (cell?.reading === undefined ? '' : words.reading(cell.reading))}</span>
    </>
  );
}
