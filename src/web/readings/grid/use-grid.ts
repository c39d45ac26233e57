import { keysOf } from '#instrument';
import { parseClipboard } from '#workshop';
import { useCallback, useMemo, useRef, useState } from 'react';
import { flushSync } from 'react-dom';
import { usePiano } from '../../api/piano.tsx';
import { openFigure } from '../../figure/figure-store.ts';
import { useLocale, useSay } from '../../language/use-say.ts';
import { pointAtKey } from '../../leaves/pointed-key.ts';
import { onKey, useDesk } from '../desk.tsx';
import { useWords } from '../use-words.ts';
import { clearBlock, copyBlock, fillDown, wholeNumber } from './grid-block.ts';
import type { GridColumn } from './grid-columns.ts';
import type { GridDerived } from './grid-layout.ts';
import { blockContextOf, editableText, takeText } from './grid-commands.ts';
import { GridCursor, draftIdOf } from './grid-cursor.ts';
import { type GridPlace, type GridSelection, type GridSize, selectOne } from './grid-move.ts';
import { type CellWrite, type PastePlan, planPaste } from './grid-paste.ts';

const ROW_PX = 34;

/** What a grid can be told to do; behind keys, pointer, clipboard and the cell's choices alike. */
export type Grid = ReturnType<typeof useGrid>;

/** The grid's commands over the desk. Nothing here renders: rows and status follow the sheet and the cursor by themselves. */
export function useGrid(columns: readonly GridColumn[], derived: GridDerived) {
  const say = useSay();
  const locale = useLocale();
  const words = useWords();
  const { id, compass, cycle } = usePiano();
  const { sheet, state, write: writeSheet, canWrite } = useDesk();
  const table = useRef<HTMLTableElement>(null);
  const [message, setMessage] = useState('');
  const [paste, setPaste] = useState<PastePlan>();
  const cursor = useMemo(() => new GridCursor(`wrestplank.refused.${id}.${String(cycle)}.${state}`), [id, cycle, state]);
  const keys = useMemo(() => keysOf(compass), [compass]);
  const context = useMemo(() => blockContextOf(sheet, state, { keys, columns, derived }), [sheet, state, keys, columns, derived]);

  const size = useCallback((): GridSize => {
    const height = table.current?.parentElement?.clientHeight ?? 10 * ROW_PX;
    return { rows: keys.length, columns: columns.length, page: Math.max(4, Math.floor(height / ROW_PX) - 2) };
  }, [keys, columns]);
  const cellAt = useCallback(({ row, column }: GridPlace) => ({ key: keys[row] ?? 1, column: columns[column] }), [keys, columns]);
  const focusCell = useCallback((): void => {
    const { row, column } = cursor.selection().focus;
    table.current?.rows[row + 1]?.cells[column + 1]?.focus();
  }, [cursor]);

  const write = useCallback((writes: readonly CellWrite[]): void => { writeSheet(writes.map(onKey)); }, [writeSheet]);
  const select = useCallback(
    (selection: GridSelection): void => {
      const { row, column } = selection.focus;
      const cell = table.current?.rows[row + 1]?.cells[column + 1];
      // The focus moves while nothing on the page is yet changed, and the scrolling waits for the frame: one layout a stroke, not three.
      cell?.focus({ preventScroll: true });
      flushSync(() => {
        cursor.select(selection);
        pointAtKey(keys[row]);
      });
      requestAnimationFrame(() => cell?.scrollIntoView({ block: 'nearest', inline: 'nearest' }));
    },
    [cursor, keys],
  );
  const step = useCallback(
    (down: number, along: number): void => {
      const { row, column } = cursor.selection().focus;
      select(selectOne({ row: row + down, column: column + along }, size()));
    },
    [cursor, select, size],
  );

  /** Opens the focused cell for editing: empty for what is being typed, or with what stands there. */
  const edit = useCallback(
    (how: 'replace' | 'change'): void => {
      const { key, column } = cellAt(cursor.selection().focus);
      if (!canWrite || column?.kind !== 'figure') return;
      const draft = cursor.drafts()[draftIdOf(key, column.id)]?.text;
      flushSync(() => { cursor.edit(how === 'replace' ? undefined : (draft ?? editableText(context.standing(key, column), words))); });
    },
    [canWrite, cellAt, context, cursor, words],
  );

  /** Takes the edited text. Refused, it stays open with the reason; when the field was left, it is kept beside the cell. */
  const commit = useCallback(
    (text: string, leaving = false): boolean => {
      const { key, column } = cellAt(cursor.selection().focus);
      if (!cursor.isEditing() || column?.kind !== 'figure') return true;
      const taken = takeText(text, { key, column, standing: context.standing(key, column), say, locale, words });
      if (taken.kind === 'refused') {
        if (!leaving) {
          cursor.refuse(taken.why);
          return false;
        }
        cursor.keepDraft(draftIdOf(key, column.id), { text, why: taken.why });
      } else {
        cursor.keepDraft(draftIdOf(key, column.id), undefined);
      }
      cursor.stopEditing();
      if (taken.kind === 'write') write([taken.write]);
      return true;
    },
    [cellAt, context, cursor, locale, say, words, write],
  );

  /** Gives up the edit, and a refused text that was kept beside the cell. */
  const restore = useCallback((): void => {
    const { key, column } = cellAt(cursor.selection().focus);
    flushSync(() => {
      cursor.stopEditing();
      if (column !== undefined) cursor.keepDraft(draftIdOf(key, column.id), undefined);
    });
    focusCell();
  }, [cellAt, cursor, focusCell]);

  const clear = useCallback((): void => {
    if (!canWrite) return;
    const { top, bottom, left, right } = cursor.box();
    const writes = clearBlock(cursor.box(), context);
    for (const key of keys.slice(top, bottom + 1)) for (const column of columns.slice(left, right + 1)) cursor.keepDraft(draftIdOf(key, column.id), undefined);
    write(writes);
    setMessage(say('readings.grid.cleared', { count: writes.length }));
  }, [canWrite, columns, context, cursor, keys, say, write]);

  const fill = useCallback((): void => {
    if (!canWrite) return;
    const writes = fillDown(cursor.box(), context);
    write(writes);
    setMessage(say('readings.grid.filled', { count: writes.length }));
  }, [canWrite, context, cursor, say, write]);

  const copy = useCallback((): string => {
    const { top, bottom, left, right } = cursor.box();
    setMessage(say('readings.grid.copied', { cells: (bottom - top + 1) * (right - left + 1) }));
    return copyBlock(cursor.box(), context, { number: (value) => wholeNumber(value, locale), outcome: (outcome) => say(`outcome.${outcome}`) });
  }, [context, cursor, locale, say]);

  const runPaste = useCallback(
    (plan: PastePlan): void => {
      setPaste(undefined);
      if (plan.kind === 'block' && plan.writes.length > 0) {
        write(plan.writes);
        setMessage(say('readings.grid.pasted', { count: plan.writes.length }));
      }
      focusCell();
    },
    [focusCell, say, write],
  );

  /** Pastes a block that raises no question; anything else is shown first. */
  const pasteText = useCallback(
    (text: string): void => {
      if (!canWrite) return;
      const plan = planPaste(parseClipboard(text), cursor.box(), { keys, columns, locale, words: words.outcomes });
      if (plan.kind === 'block' && plan.refused.length + plan.unlikely.length === 0 && plan.heading === null && plan.writes.length > 0) runPaste(plan);
      else setPaste(plan);
    },
    [canWrite, columns, cursor, keys, locale, runPaste, words],
  );

  /** Opens a derived figure back to its readings and formula. */
  const openDerived = useCallback((): boolean => {
    const { key, column } = cellAt(cursor.selection().focus);
    if (column?.kind !== 'derived') return false;
    openFigure(derived.story(key, column.id));
    return true;
  }, [cellAt, cursor, derived]);

  return { table, cursor, keys, context, words, message, setMessage, paste, setPaste, size, cellAt, focusCell, select, step, edit, commit, restore, clear, fill, copy, runPaste, pasteText, openDerived, write };
}
