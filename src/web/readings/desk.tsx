import { type QuantityName, type State, quantityOf } from '#instrument';
import type { ReadingEntry } from '#workshop';
import { type ReactNode, createContext, useCallback, useContext, useMemo, useRef } from 'react';
import { usePiano } from '../api/piano.tsx';
import { useEnter } from '../api/use-readings.ts';
import { heldAt } from '../outbox/parcel.ts';
import { outbox } from '../outbox/the-outbox.ts';
import type { CellWrite } from './grid/grid-paste.ts';
import { type SessionChoice, useSessionChoice } from './session/session-choice.ts';
import { cellIdOf } from './sheet/sheet-row.ts';
import type { Sheet } from './sheet/sheet.ts';
import { useSheet } from './sheet/use-sheet.ts';

/** What every part of the readings page works with. */
export interface Desk {
  readonly state: State;
  readonly sheet: Sheet;
  readonly session: SessionChoice;
  /** False for an earlier stay: it is read, not written. */
  readonly canWrite: boolean;
  /** Keeps cells as one step, to be undone as one. Weights wait in the outbox until it is said how they were weighed. */
  readonly write: (writes: readonly SheetWrite[]) => void;
}

/** A cell to write: of a key, or of the lever arms (`index` 0 naturals, 1 sharps) or the whole instrument. */
export type SheetWrite = Omit<CellWrite, 'key'> & { readonly index: number };

const DeskContext = createContext<Desk | null>(null);

/** The desk of the page. @throws Error outside the readings page. */
export function useDesk(): Desk {
  const desk = useContext(DeskContext);
  if (desk === null) throw new Error('useDesk stands outside the readings page');
  return desk;
}

/** A cell of a key, as the desk takes it. */
export function onKey({ key, ...write }: CellWrite): SheetWrite {
  return { ...write, index: key };
}

export function DeskProvider({ state, children }: { readonly state: State; readonly children: ReactNode }) {
  const { id, cycle, isCurrent } = usePiano();
  const sheet = useSheet();
  const choice = useSessionChoice(state);
  const enter = useEnter();
  const { decided, choose } = choice;
  const sessionId = choice.current?.id ?? null;

  const answer = useCallback(
    (chosen: string | null): void => {
      choose(chosen);
      outbox.answer({ pianoId: id, cycle, state }, chosen);
    },
    [choose, id, cycle, state],
  );
  const session = useMemo((): SessionChoice => ({ ...choice, choose: answer }), [choice, answer]);
  const keep = useCallback(
    (writes: readonly SheetWrite[]): void => {
      const asks = !decided || heldAt(outbox.state().parcels, { pianoId: id, cycle, state }).length > 0;
      const isHeld = asks && writes.some(({ quantity, clear }) => quantityOf(quantity).weighed && clear !== true);
      // Only what is weighed belongs to a weighing session.
      const isWeighed = writes.some(({ quantity }) => quantityOf(quantity).weighed);
      enter({ state, sessionId: isHeld || !isWeighed ? null : sessionId }, writes.map((write) => entryOf(write, sheet, state)), isHeld ? 'held' : 'waiting');
    },
    [enter, decided, id, cycle, sessionId, sheet, state],
  );
  // Every keystroke writes through the same function, so that a change of session renders no cell.
  const latest = useRef(keep);
  latest.current = keep;
  const write = useCallback((writes: readonly SheetWrite[]): void => {
    if (writes.length > 0) latest.current(writes);
  }, []);

  const desk = useMemo((): Desk => ({ state, sheet, session, canWrite: isCurrent, write }), [state, sheet, session, isCurrent, write]);
  return <DeskContext value={desk}>{children}</DeskContext>;
}

/** What goes to the server: a corrected figure keeps the remark that stands beside it, unless another was given. */
function entryOf({ quantity, index, repeat, typed, outcome, clear, remark }: SheetWrite, sheet: Sheet, state: State): ReadingEntry {
  const { scope } = quantityOf(quantity);
  const standing = sheet.cell(state, scope, index, cellIdOf(quantity, repeat))?.reading?.remark;
  const words = remark ?? (clear === true ? undefined : standing);
  return {
    quantity: quantity satisfies QuantityName,
    scope,
    index,
    repeat,
    ...(typed === undefined ? {} : { typed }),
    ...(outcome === undefined ? {} : { outcome }),
    ...(clear === undefined ? {} : { clear }),
    ...(words === undefined || words === '' ? {} : { remark: words }),
  };
}
