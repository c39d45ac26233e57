/** A table as it stood in a file: every row, blank ones too, every cell as text exactly as written. */
export interface Table {
  /** `utf-8`, `utf-16le`, `utf-16be`, `windows-1252`, or `xlsx`. */
  readonly encoding: string;
  /** Sign between the columns; empty for a workbook. */
  readonly delimiter: string;
  /** The sheet that was read, and all there are; null and none for a text file. */
  readonly sheet: string | null;
  readonly sheets: readonly string[];
  /** `rows[0]` is row 1 as a spreadsheet counts. Rows may be of different lengths. */
  readonly rows: readonly (readonly string[])[];
}

/** A table to be written: numbers stay numbers, so that each format writes them its own way and none is rounded. */
export interface PrintedTable {
  readonly header: readonly string[];
  readonly rows: readonly (readonly (string | number)[])[];
}

/** Letter of a column as a spreadsheet shows it: 0 gives A, 25 Z, 26 AA. */
export function columnLetter(index: number): string {
  const rest = Math.floor(index / 26);
  const letter = String.fromCharCode(65 + (index % 26));
  return rest === 0 ? letter : columnLetter(rest - 1) + letter;
}

/** True for a row without a single sign in it. */
export function isBlankRow(cells: readonly string[]): boolean {
  return cells.every((cell) => cell.trim() === '');
}
