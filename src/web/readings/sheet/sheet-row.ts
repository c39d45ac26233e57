import { balanceWeightOf, frictionOf } from '#action';
import type { KeyNumber, QuantityName, Reading } from '#instrument';
import { grams } from '#units';

/** How a cell's figure stands: acknowledged, held for an answer, on its way, or in need of a decision. */
export type CellSync = 'kept' | 'held' | 'waiting' | 'sending' | 'conflict' | 'refused';

/** One place of the sheet as the person sees it. */
export interface SheetCell {
  /** The figure shown: typed here if it is on its way, else the acknowledged one; undefined where it was cleared. */
  readonly reading: Reading | undefined;
  readonly sync: CellSync;
  /** The parcel it travels in, while it does. */
  readonly sendId?: string;
  /** What the server holds, where that differs from what is shown. */
  readonly acknowledged?: Reading;
  /** Why the server would not have it, in its words. */
  readonly problem?: string;
}

/** Id of a cell within its row: `downWeightG/1`. */
export type CellId = string;

export const cellIdOf = (quantity: string, repeat: number): CellId => `${quantity}/${String(repeat)}`;

/** One key of the sheet: its cells, and what follows from them. */
export interface SheetRow {
  readonly key: KeyNumber;
  readonly cells: ReadonlyMap<CellId, SheetCell>;
  readonly downWeightG?: number;
  readonly upWeightG?: number;
  readonly balanceWeightG?: number;
  readonly frictionG?: number;
  /** True when up weight stands above down weight. */
  readonly upAboveDown: boolean;
  /** True when a weighing of this key ended without a number. */
  readonly outcome: boolean;
}

/** Mean of a quantity's repeats; undefined without a figure, or where one of them ended without a number. */
function meanOf(cells: ReadonlyMap<CellId, SheetCell>, quantity: QuantityName): number | undefined {
  const readings = [...cells.values()].flatMap(({ reading }) => (reading?.quantity === quantity ? [reading] : []));
  const values = readings.flatMap(({ value }) => (value === null ? [] : [value]));
  return values.length === 0 || values.length < readings.length ? undefined : values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** Works out what follows from the cells of a key; balance and friction are left open where the up weight stands above the down weight. */
export function rowOf(key: KeyNumber, cells: ReadonlyMap<CellId, SheetCell>): SheetRow {
  const down = meanOf(cells, 'downWeightG');
  const up = meanOf(cells, 'upWeightG');
  const outcome = [...cells.values()].some(({ reading }) => reading?.outcome != null);
  const both = down === undefined || up === undefined ? undefined : { downWeightG: grams(down), upWeightG: grams(up) };
  const upAboveDown = both !== undefined && both.upWeightG > both.downWeightG;
  return {
    key,
    cells,
    outcome,
    upAboveDown,
    ...(down === undefined ? {} : { downWeightG: down }),
    ...(up === undefined ? {} : { upWeightG: up }),
    ...(both === undefined || upAboveDown ? {} : { balanceWeightG: balanceWeightOf(both), frictionG: frictionOf(both) }),
  };
}

/** True when two rows show the same: readings are never changed, so their ids tell. */
export function sameCells(one: ReadonlyMap<CellId, SheetCell>, other: ReadonlyMap<CellId, SheetCell>): boolean {
  if (one.size !== other.size) return false;
  for (const [id, cell] of one) {
    const twin = other.get(id);
    if (twin === undefined || twin.reading?.id !== cell.reading?.id || twin.sync !== cell.sync || twin.sendId !== cell.sendId || twin.problem !== cell.problem || twin.acknowledged?.id !== cell.acknowledged?.id) return false;
  }
  return true;
}
