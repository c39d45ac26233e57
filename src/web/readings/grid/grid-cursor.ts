import { readKept, writeKept } from '../../kept/kept.ts';
import { type GridBox, type GridPlace, type GridSelection, boxOf, isIn } from './grid-move.ts';

/** A text that was typed into a cell and could not be taken: shown until it is corrected or given up. */
export interface RefusedDraft {
  readonly text: string;
  readonly why: string;
}

/** How a row takes part in the cursor: which cell is focused, selected, edited. */
export interface RowCursor {
  readonly focus: number | undefined;
  readonly from: number;
  readonly to: number;
  readonly isEditing: boolean;
}

const START: GridSelection = { focus: { row: 0, column: 0 }, anchor: { row: 0, column: 0 } };
const ASIDE: RowCursor = { focus: undefined, from: 1, to: 0, isEditing: false };

/**
 * Where the grid's cursor stands and what is being edited, outside of React: moving it renders the rows it leaves and reaches, no others.
 */
export class GridCursor {
  readonly #listeners = new Set<() => void>();
  readonly #kept: string;
  readonly #rows = new Map<number, RowCursor>();
  #selection: GridSelection = START;
  #box: GridBox = boxOf(START);
  #initialText: string | undefined;
  #isEditing = false;
  #error = '';
  #drafts: Readonly<Record<string, RefusedDraft>>;

  /** `kept` names the place in the window's storage where refused texts outlive a reload. */
  constructor(kept: string) {
    this.#kept = kept;
    this.#drafts = readKept(sessionStorage, kept, {});
  }

  selection = (): GridSelection => this.#selection;
  box = (): GridBox => this.#box;
  isEditing = (): boolean => this.#isEditing;
  /** Text the editor opens with; undefined opens it empty for what is being typed. */
  initialText = (): string | undefined => this.#initialText;
  error = (): string => this.#error;
  drafts = (): Readonly<Record<string, RefusedDraft>> => this.#drafts;

  select(selection: GridSelection): void {
    this.#selection = selection;
    this.#box = boxOf(selection);
    this.#isEditing = false;
    this.#error = '';
    this.#tell();
  }

  edit(initialText: string | undefined): void {
    this.#selection = { focus: this.#selection.focus, anchor: this.#selection.focus };
    this.#box = boxOf(this.#selection);
    this.#initialText = initialText;
    this.#isEditing = true;
    this.#error = '';
    this.#tell();
  }

  stopEditing(): void {
    this.#isEditing = false;
    this.#error = '';
    this.#tell();
  }

  /** Says what is wrong with the text being edited. */
  refuse(error: string): void {
    if (error === this.#error) return;
    this.#error = error;
    this.#tell();
  }

  /** Keeps a text that could not be taken beside its cell, or lets it go. */
  keepDraft(cell: string, draft: RefusedDraft | undefined): void {
    if (draft === undefined && !Object.hasOwn(this.#drafts, cell)) return;
    const { [cell]: _, ...others } = this.#drafts;
    this.#drafts = draft === undefined ? others : { ...others, [cell]: draft };
    writeKept(sessionStorage, this.#kept, this.#drafts);
    this.#tell();
  }

  /** The row's part in the cursor; the same object while it stays the same. */
  rowCursor(row: number): RowCursor {
    const { focus } = this.#selection;
    const inBox = row >= this.#box.top && row <= this.#box.bottom;
    if (!inBox && focus.row !== row) return ASIDE;
    const now: RowCursor = {
      focus: focus.row === row ? focus.column : undefined,
      from: this.#box.left,
      to: this.#box.right,
      isEditing: this.#isEditing && focus.row === row,
    };
    const before = this.#rows.get(row);
    if (before !== undefined && before.focus === now.focus && before.from === now.from && before.to === now.to && before.isEditing === now.isEditing) return before;
    this.#rows.set(row, now);
    return now;
  }

  isSelected(place: GridPlace): boolean {
    return isIn(place, this.#box);
  }

  subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => {
      this.#listeners.delete(listener);
    };
  };

  #tell(): void {
    for (const listener of this.#listeners) listener();
  }
}

/** Id of a cell's refused text. */
export const draftIdOf = (key: number, columnId: string): string => `${String(key)} ${columnId}`;
