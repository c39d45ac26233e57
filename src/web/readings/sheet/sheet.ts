import { type Compass, type KeyNumber, type Reading, type State, isQuantityName, keyCountOf, states, understandFigure } from '#instrument';
import type { Parcel, ParcelEntry } from '../../outbox/parcel.ts';
import { type CellId, type SheetCell, type SheetRow, cellIdOf, rowOf, sameCells } from './sheet-row.ts';

type Cells = Map<CellId, SheetCell>;
const NO_CELLS: ReadonlyMap<CellId, SheetCell> = new Map();
const rowId = (state: State, scope: string, index: number): string => `${state}/${scope}/${String(index)}`;

/**
 * The readings of one stay in the shop as a person sees them: what the server acknowledged, with what is still on its way over it.
 * A row keeps its identity until something in it changes, so that a keystroke draws one row and not the table.
 */
export class Sheet {
  readonly #pianoId: string;
  readonly #compass: Compass;
  readonly #cycle: number;
  readonly #listeners = new Set<() => void>();
  #readings: readonly Reading[] = [];
  #parcels: readonly Parcel[] = [];
  #base: ReadonlyMap<string, ReadonlyMap<CellId, SheetCell>> = new Map();
  #rows: ReadonlyMap<string, SheetRow> = new Map();
  #keyRows: Readonly<Record<State, readonly SheetRow[]>> = { found: [], planned: [], finished: [] };
  readonly #typed = new WeakMap<ParcelEntry, Reading>();

  constructor({ pianoId, compass, cycle }: { readonly pianoId: string; readonly compass: Compass; readonly cycle: number }) {
    this.#pianoId = pianoId;
    this.#compass = compass;
    this.#cycle = cycle;
    this.#lay();
  }

  /** Takes what the server holds and what is on its way; tells listeners when anything seen has changed. */
  show(readings: readonly Reading[], parcels: readonly Parcel[]): void {
    if (readings === this.#readings && parcels === this.#parcels) return;
    if (readings !== this.#readings) {
      this.#readings = readings;
      this.#base = baseOf(readings);
    }
    this.#parcels = parcels;
    if (!this.#lay()) return;
    for (const listener of this.#listeners) listener();
  }

  /** Rows of every key, bass to treble. The list keeps its identity while no row changes. */
  rows(state: State): readonly SheetRow[] {
    return this.#keyRows[state];
  }

  /** The row of one key. */
  row(state: State, key: KeyNumber): SheetRow {
    return this.#keyRows[state][key - 1] ?? rowOf(key, NO_CELLS);
  }

  /** A cell of the lever arms (0 naturals, 1 sharps) or of the whole instrument (0). */
  cell(state: State, scope: Reading['scope'], index: number, id: CellId): SheetCell | undefined {
    return this.#rows.get(rowId(state, scope, index))?.cells.get(id);
  }

  subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => {
      this.#listeners.delete(listener);
    };
  };

  /** Lays what is on its way over what stands; answers whether anything changed. */
  #lay(): boolean {
    const laid = new Map<string, Cells>();
    for (const parcel of this.#parcels) {
      if (parcel.pianoId !== this.#pianoId || parcel.cycle !== this.#cycle) continue;
      for (const entry of parcel.entries) {
        const id = rowId(parcel.state, entry.scope, entry.index);
        const cells = laid.get(id) ?? new Map(this.#base.get(id) ?? NO_CELLS);
        laid.set(id, cells);
        const cellId = cellIdOf(entry.quantity, entry.repeat ?? 1);
        cells.set(cellId, this.#travelling(parcel, entry, cells.get(cellId)));
      }
    }
    const rows = new Map<string, SheetRow>();
    let changed = false;
    const keep = (id: string, index: number): SheetRow => {
      const cells = laid.get(id) ?? this.#base.get(id) ?? NO_CELLS;
      const known = this.#rows.get(id);
      if (known !== undefined && (known.cells === cells || sameCells(known.cells, cells))) {
        rows.set(id, known);
        return known;
      }
      const made = rowOf(index, cells);
      changed = true;
      rows.set(id, made);
      return made;
    };
    const keyRows = { ...this.#keyRows };
    for (const state of states) {
      const now = Array.from({ length: keyCountOf(this.#compass) }, (_, index) => keep(rowId(state, 'key', index + 1), index + 1));
      if (now.length !== keyRows[state].length || now.some((row, index) => row !== keyRows[state][index])) keyRows[state] = now;
      for (const [scope, index] of [['colour', 0], ['colour', 1], ['instrument', 0]] as const) keep(rowId(state, scope, index), index);
    }
    this.#keyRows = keyRows;
    this.#rows = rows;
    return changed;
  }

  #travelling(parcel: Parcel, entry: ParcelEntry, below: SheetCell | undefined): SheetCell {
    const acknowledged = below === undefined || below.sync === 'kept' ? below?.reading : below.acknowledged;
    const problem = parcel.problem?.message;
    return {
      reading: entry.clear === true ? undefined : this.#readingOf(parcel, entry),
      sync: parcel.status,
      sendId: parcel.sendId,
      ...(acknowledged === undefined ? {} : { acknowledged }),
      ...(problem === undefined ? {} : { problem }),
    };
  }

  /** What a typed entry will be read as: the same figure the server will make of it. */
  #readingOf(parcel: Parcel, entry: ParcelEntry): Reading | undefined {
    const known = this.#typed.get(entry);
    if (known !== undefined || !isQuantityName(entry.quantity)) return known;
    const figure = entry.typed === undefined ? undefined : understandFigure(entry.quantity, entry.typed, { path: entry.quantity, ...(parcel.locale === undefined ? {} : { locale: parcel.locale }) });
    const made: Reading = {
      id: `${parcel.sendId}/${entry.quantity}/${entry.scope}/${String(entry.index)}/${String(entry.repeat ?? 1)}`,
      cycle: this.#cycle,
      state: parcel.state,
      quantity: entry.quantity,
      scope: entry.scope,
      index: entry.index,
      repeat: entry.repeat ?? 1,
      typed: entry.typed ?? null,
      value: figure?.ok === true ? figure.value.value : null,
      outcome: entry.outcome ?? null,
      uncertainty: null,
      basis: entry.basis ?? 'measured',
      remark: entry.remark ?? '',
      sessionId: parcel.sessionId,
      at: new Date(parcel.typedAt).toISOString(),
      by: parcel.by ?? '',
    };
    this.#typed.set(entry, made);
    return made;
  }
}

function baseOf(readings: readonly Reading[]): ReadonlyMap<string, ReadonlyMap<CellId, SheetCell>> {
  const base = new Map<string, Cells>();
  for (const reading of readings) {
    const id = rowId(reading.state, reading.scope, reading.index);
    const cells = base.get(id) ?? new Map<CellId, SheetCell>();
    base.set(id, cells);
    cells.set(cellIdOf(reading.quantity, reading.repeat), { reading, sync: 'kept' });
  }
  return base;
}
