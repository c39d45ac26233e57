import type { State } from '#instrument';
import { useEffect, useState } from 'react';
import { flushSync } from 'react-dom';
import type { SheetRow } from '../sheet/sheet-row.ts';
import type { Sheet } from '../sheet/sheet.ts';

type Rows = Readonly<Record<State, readonly SheetRow[]>>;

const rowsOf = (sheet: Sheet): Rows => ({ found: sheet.rows('found'), planned: sheet.rows('planned'), finished: sheet.rows('finished') });

/** True when nothing drawn of two rows differs: what is only being saved moves no point. */
function samePoints(one: readonly SheetRow[], other: readonly SheetRow[]): boolean {
  return one === other || (one.length === other.length && one.every((row, index) => row === other[index]
    || (row.downWeightG === other[index]?.downWeightG && row.upWeightG === other[index]?.upWeightG && row.outcome === other[index]?.outcome)));
}

/**
 * Every row, for the plots: however many changes a keystroke makes, they are drawn once, in the frame the keystroke is painted in.
 * A state whose points did not move keeps its list.
 */
export function useFrameRows(sheet: Sheet): Rows {
  const [rows, setRows] = useState(() => rowsOf(sheet));
  useEffect(() => {
    let frame = 0;
    const draw = (): void => {
      frame = 0;
      flushSync(() => {
        setRows((before) => {
          const now = rowsOf(sheet);
          const [found, planned, finished] = (['found', 'planned', 'finished'] as const).map((state) => (samePoints(before[state], now[state]) ? before[state] : now[state]));
          const same = found === before.found && planned === before.planned && finished === before.finished;
          return same ? before : { found: found ?? now.found, planned: planned ?? now.planned, finished: finished ?? now.finished };
        });
      });
    };
    const ask = (): void => {
      if (frame === 0) frame = requestAnimationFrame(draw);
    };
    ask();
    const leave = sheet.subscribe(ask);
    return () => {
      leave();
      cancelAnimationFrame(frame);
    };
  }, [sheet]);
  return rows;
}
