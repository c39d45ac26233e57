/** A cell by its place in the grid, both from 0. */
export interface GridPlace {
  readonly row: number;
  readonly column: number;
}

/** The cell that has the focus, and the one the selection was drawn from. */
export interface GridSelection {
  readonly focus: GridPlace;
  readonly anchor: GridPlace;
}

export interface GridSize {
  readonly rows: number;
  readonly columns: number;
  /** Rows a page key moves by. */
  readonly page: number;
}

export interface GridBox {
  readonly top: number;
  readonly bottom: number;
  readonly left: number;
  readonly right: number;
}

export interface Stroke {
  readonly key: string;
  readonly ctrl: boolean;
  readonly shift: boolean;
}

const STEPS: Readonly<Record<string, (place: GridPlace, size: GridSize, ctrl: boolean) => GridPlace>> = {
  ArrowUp: ({ row, column }, _, ctrl) => ({ row: ctrl ? 0 : row - 1, column }),
  ArrowDown: ({ row, column }, { rows }, ctrl) => ({ row: ctrl ? rows - 1 : row + 1, column }),
  ArrowLeft: ({ row, column }, _, ctrl) => ({ row, column: ctrl ? 0 : column - 1 }),
  ArrowRight: ({ row, column }, { columns }, ctrl) => ({ row, column: ctrl ? columns - 1 : column + 1 }),
  Home: ({ row }, _, ctrl) => ({ row: ctrl ? 0 : row, column: 0 }),
  End: ({ row }, { rows, columns }, ctrl) => ({ row: ctrl ? rows - 1 : row, column: columns - 1 }),
  PageUp: ({ row, column }, { page }) => ({ row: row - page, column }),
  PageDown: ({ row, column }, { page }) => ({ row: row + page, column }),
};

const within = ({ row, column }: GridPlace, { rows, columns }: GridSize): GridPlace => ({
  row: Math.min(Math.max(row, 0), Math.max(0, rows - 1)),
  column: Math.min(Math.max(column, 0), Math.max(0, columns - 1)),
});

/** Where a key of the grid pattern leads, or undefined for a key that moves nothing. Shift draws the selection out. */
export function moveSelection(selection: GridSelection, stroke: Stroke, size: GridSize): GridSelection | undefined {
  const step = STEPS[stroke.key];
  if (step === undefined) return undefined;
  const focus = within(step(selection.focus, size, stroke.ctrl), size);
  return { focus, anchor: stroke.shift ? selection.anchor : focus };
}

/** A selection of one cell. */
export function selectOne(place: GridPlace, size: GridSize): GridSelection {
  const focus = within(place, size);
  return { focus, anchor: focus };
}

/** The rectangle a selection covers, both ends counted. */
export function boxOf({ focus, anchor }: GridSelection): GridBox {
  return {
    top: Math.min(focus.row, anchor.row),
    bottom: Math.max(focus.row, anchor.row),
    left: Math.min(focus.column, anchor.column),
    right: Math.max(focus.column, anchor.column),
  };
}

/** True when the box covers more than one cell. */
export function isWide({ top, bottom, left, right }: GridBox): boolean {
  return bottom > top || right > left;
}

/** True when the cell lies in the box. */
export function isIn({ row, column }: GridPlace, { top, bottom, left, right }: GridBox): boolean {
  return row >= top && row <= bottom && column >= left && column <= right;
}
