import type { KeyNumber, Reading, State } from '#instrument';
import { useCallback, useLayoutEffect, useMemo, useSyncExternalStore } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { queryClient, readingsQuery } from '../../api/queries.ts';
import { outbox } from '../../outbox/the-outbox.ts';
import type { SheetCell, SheetRow } from './sheet-row.ts';
import { Sheet } from './sheet.ts';

const NONE: readonly Reading[] = [];

/** The sheet of the piano and stay looked at. It follows the server's readings and the outbox by itself, past the components that do not change. */
export function useSheet(): Sheet {
  const { id, compass, cycle } = usePiano();
  const { firstMidi, lastMidi } = compass;
  const sheet = useMemo(() => new Sheet({ pianoId: id, compass: { firstMidi, lastMidi }, cycle }), [id, firstMidi, lastMidi, cycle]);
  useLayoutEffect(() => {
    const { queryKey } = readingsQuery(id, cycle);
    const show = (): void => {
      sheet.show(queryClient.getQueryData(queryKey) ?? NONE, outbox.state().parcels);
    };
    show();
    const leaveOutbox = outbox.subscribe(show);
    const leaveQueries = queryClient.getQueryCache().subscribe(({ type, query }) => {
      const [, piano, part] = query.queryKey as readonly unknown[];
      if (type === 'updated' && piano === id && part === 'readings') show();
    });
    return () => {
      leaveOutbox();
      leaveQueries();
    };
  }, [sheet, id, cycle]);
  return sheet;
}

/** One key's row; renders anew only when something in that row changed. */
export function useRow(sheet: Sheet, state: State, key: KeyNumber): SheetRow {
  return useSyncExternalStore(sheet.subscribe, useCallback(() => sheet.row(state, key), [sheet, state, key]));
}

/** Every row of a state; the list keeps its identity while none of it changes. */
export function useRows(sheet: Sheet, state: State): readonly SheetRow[] {
  return useSyncExternalStore(sheet.subscribe, useCallback(() => sheet.rows(state), [sheet, state]));
}

/** One cell of the lever arms or of the whole instrument. */
export function useCell(sheet: Sheet, state: State, place: { readonly scope: Reading['scope']; readonly index: number; readonly id: string }): SheetCell | undefined {
  const { scope, index, id } = place;
  return useSyncExternalStore(sheet.subscribe, useCallback(() => sheet.cell(state, scope, index, id), [sheet, state, scope, index, id]));
}
