import type { QuantityName, Reading } from '#instrument';
import { quantityOf } from '#instrument';
import type { ReactNode } from 'react';
import type { SheetCell } from '../sheet/sheet-row.ts';

/** True when a figure is possible but not plausible. */
export function isUnlikely(reading: Reading | undefined): boolean {
  if (reading === undefined || reading.value === null) return false;
  const [low, high] = quantityOf(reading.quantity satisfies QuantityName).plausible;
  return reading.value < low || reading.value > high;
}

interface CellMarksProps {
  readonly cell: SheetCell | undefined;
  readonly upAboveDown: boolean;
  readonly refused: boolean;
}

/** Small signs behind a figure: on its way, needs a decision, unlikely, remarked. Each is also told in words under the grid. */
export function CellMarks({ cell, upAboveDown, refused }: CellMarksProps): ReactNode {
  const sign = refused || cell?.sync === 'refused' ? '✕' : cell?.sync === 'conflict' ? '≠' : upAboveDown || isUnlikely(cell?.reading) ? '▲' : '';
  const waits = cell?.sync === 'held' ? '?' : cell?.sync === 'waiting' || cell?.sync === 'sending' ? '…' : '';
  const remarked = (cell?.reading?.remark ?? '') !== '';
  if (sign === '' && waits === '' && !remarked) return null;
  return (
    <span className="cell-marks" aria-hidden="true">
      {remarked && <span className="cell-remark">✎</span>}
      {waits !== '' && <span className="cell-waits">{waits}</span>}
      {sign !== '' && <span className={sign === '▲' ? 'cell-warn' : 'cell-bad'}>{sign}</span>}
    </span>
  );
}
