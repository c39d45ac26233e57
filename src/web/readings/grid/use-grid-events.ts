import { type ClipboardEvent, type FocusEvent, type KeyboardEvent, type MouseEvent, type PointerEvent, useMemo } from 'react';
import { pointAtKey } from '../../leaves/pointed-key.ts';
import { type GridPlace, moveSelection, selectOne } from './grid-move.ts';
import type { Grid } from './use-grid.ts';

/** The editor's input, when the event comes from it. */
const editorOf = (target: EventTarget): HTMLInputElement | undefined => (target instanceof HTMLInputElement && target.classList.contains('cell-input') ? target : undefined);

/** The cell an event happened in. */
function placeOf(target: EventTarget): GridPlace | undefined {
  if (!(target instanceof Element)) return undefined;
  const cell = target.closest<HTMLElement>('[data-column]');
  const row = cell?.closest<HTMLElement>('[data-row]');
  return cell == null || row == null ? undefined : { row: Number(row.dataset['row']), column: Number(cell.dataset['column']) };
}

const isPrintable = ({ key, ctrlKey, metaKey, altKey }: KeyboardEvent): boolean => key.length === 1 && key !== ' ' && !ctrlKey && !metaKey && !altKey;

/** Keys, pointer and clipboard of the grid, after the ARIA grid pattern: one stop of the Tab key, arrows within. */
export function useGridEvents(grid: Grid, onMenu: () => void) {
  return useMemo(() => {
    const onEditorKey = (event: KeyboardEvent, input: HTMLInputElement): void => {
      if (event.nativeEvent.isComposing) return;
      const { key, shiftKey } = event;
      if (key === 'Escape') {
        event.preventDefault();
        event.stopPropagation();
        grid.restore();
      } else if (key === 'Enter') {
        event.preventDefault();
        if (grid.commit(input.value)) grid.step(shiftKey ? -1 : 1, 0);
      } else if (key === 'Tab') {
        const next = grid.cellAt({ row: grid.cursor.selection().focus.row, column: grid.cursor.selection().focus.column + (shiftKey ? -1 : 1) });
        if (!grid.commit(input.value)) event.preventDefault();
        else if (next.column?.kind === 'figure') {
          event.preventDefault();
          grid.step(0, shiftKey ? -1 : 1);
        } else grid.focusCell();
      } else if (key === 'ArrowUp' || key === 'ArrowDown') {
        event.preventDefault();
        if (grid.commit(input.value)) grid.step(key === 'ArrowUp' ? -1 : 1, 0);
      }
    };
    const onCellKey = (event: KeyboardEvent): void => {
      const { key, shiftKey } = event;
      const ctrl = event.ctrlKey || event.metaKey;
      const moved = event.altKey ? undefined : moveSelection(grid.cursor.selection(), { key, ctrl, shift: shiftKey }, grid.size());
      const command = commandOf(key, ctrl, shiftKey);
      if (moved !== undefined) {
        event.preventDefault();
        grid.select(moved);
      } else if (command !== undefined) {
        event.preventDefault();
        run(command);
      } else if (isPrintable(event)) {
        // The browser puts the character into the editor, which has the focus by the time it does.
        grid.edit('replace');
      }
    };
    const run = (command: GridCommand): void => {
      const { rows, columns } = grid.size();
      switch (command) {
        case 'edit': grid.edit('change'); break;
        case 'down': if (!grid.openDerived()) grid.step(1, 0); break;
        case 'up': grid.step(-1, 0); break;
        case 'clear': grid.clear(); break;
        case 'fill': grid.fill(); break;
        case 'all': grid.select({ anchor: { row: 0, column: 0 }, focus: { row: rows - 1, column: columns - 1 } }); break;
        case 'menu': onMenu(); break;
        case 'none': break;
      }
    };
    return {
      onKeyDown: (event: KeyboardEvent<HTMLTableElement>): void => {
        const input = editorOf(event.target);
        if (input === undefined) onCellKey(event);
        else onEditorKey(event, input);
      },
      onBlur: (event: FocusEvent<HTMLTableElement>): void => {
        const input = editorOf(event.target);
        if (input !== undefined) grid.commit(input.value, true);
      },
      onFocus: (event: FocusEvent<HTMLTableElement>): void => {
        const place = placeOf(event.target);
        if (place !== undefined) pointAtKey(grid.keys[place.row]);
      },
      onPointerDown: (event: PointerEvent<HTMLTableElement>): void => {
        const place = placeOf(event.target);
        if (place === undefined || event.button !== 0 || event.pointerType === 'touch' || editorOf(event.target) !== undefined) return;
        event.preventDefault();
        const editor = grid.table.current?.querySelector<HTMLInputElement>('.cell-input');
        if (editor != null) grid.commit(editor.value, true);
        grid.select(event.shiftKey ? { anchor: grid.cursor.selection().anchor, focus: place } : selectOne(place, grid.size()));
      },
      onPointerOver: (event: PointerEvent<HTMLTableElement>): void => {
        const place = placeOf(event.target);
        if (place === undefined) return;
        if (event.buttons === 1 && event.pointerType !== 'touch' && !grid.cursor.isEditing()) grid.select({ anchor: grid.cursor.selection().anchor, focus: place });
        // A mouse at rest points at nothing, even where the browser reports it over a cell that has just changed.
        else if (event.movementX !== 0 || event.movementY !== 0) pointAtKey(grid.keys[place.row]);
      },
      onClick: (event: MouseEvent<HTMLTableElement>): void => {
        const place = placeOf(event.target);
        const isTouch = event.nativeEvent instanceof PointerEvent && event.nativeEvent.pointerType === 'touch';
        if (place === undefined || editorOf(event.target) !== undefined || !isTouch) return;
        grid.select(selectOne(place, grid.size()));
        if (!grid.openDerived()) grid.edit('change');
      },
      onDoubleClick: (event: MouseEvent<HTMLTableElement>): void => {
        if (placeOf(event.target) === undefined || editorOf(event.target) !== undefined) return;
        if (!grid.openDerived()) grid.edit('change');
      },
      onContextMenu: (event: MouseEvent<HTMLTableElement>): void => {
        const place = placeOf(event.target);
        if (place === undefined || editorOf(event.target) !== undefined) return;
        event.preventDefault();
        if (!grid.cursor.isSelected(place)) grid.select(selectOne(place, grid.size()));
        onMenu();
      },
      onCopy: (event: ClipboardEvent<HTMLTableElement>): void => {
        if (editorOf(event.target) !== undefined) return;
        event.preventDefault();
        event.clipboardData.setData('text/plain', grid.copy());
      },
      onCut: (event: ClipboardEvent<HTMLTableElement>): void => {
        if (editorOf(event.target) !== undefined) return;
        event.preventDefault();
        event.clipboardData.setData('text/plain', grid.copy());
        grid.clear();
      },
      onPaste: (event: ClipboardEvent<HTMLTableElement>): void => {
        const text = event.clipboardData.getData('text/plain');
        const isBlock = /[\t\n\r]/u.test(text.replace(/[\r\n]+$/u, ''));
        const input = editorOf(event.target);
        if (input !== undefined) {
          if (!isBlock) return;
          grid.commit(input.value, true);
        }
        event.preventDefault();
        grid.pasteText(text);
      },
    };
  }, [grid, onMenu]);
}

type GridCommand = 'edit' | 'down' | 'up' | 'clear' | 'fill' | 'all' | 'menu' | 'none';

function commandOf(key: string, ctrl: boolean, shift: boolean): GridCommand | undefined {
  if (ctrl) return key.toLowerCase() === 'd' ? 'fill' : key.toLowerCase() === 'a' ? 'all' : undefined;
  if (key === 'F10' && shift) return 'menu';
  return ({ F2: 'edit', Enter: shift ? 'up' : 'down', Delete: 'clear', Backspace: 'clear', ContextMenu: 'menu', ' ': 'none' } as const)[key];
}
