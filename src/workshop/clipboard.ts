const QUOTED = /"((?:[^"]|"")*)"(?=\t|\r\n|\r|\n|$)/uy;
const PLAIN = /[^\t\r\n]*/uy;
const LINE_END = /\r\n|\r|\n/uy;

/**
 * Rows and cells of text copied from a spreadsheet: cells apart by tabs, rows by line ends.
 * A cell in quotes may hold tabs and line ends, its own quotes doubled; quotes that do not enclose a whole cell are text, as in `3 1/4"`.
 * The line end a spreadsheet puts behind the last row starts no further row, so that nothing below is overwritten;
 * an empty cell copied on purpose, in the middle or as a last row of its own, stays.
 * Empty text gives no rows. Rows may be of different lengths.
 */
export function parseClipboard(text: string): string[][] {
  const source = text.replace(/^\uFEFF/u, '').replace(/\0+$/u, '');
  const rows: string[][] = [];
  let row: string[] = [];
  let at = 0;
  while (at < source.length || row.length > 0) {
    const quoted = matchAt(QUOTED, source, at);
    const cell = quoted ?? matchAt(PLAIN, source, at);
    row.push(quoted === undefined ? (cell?.[0] ?? '') : (quoted[1] ?? '').replaceAll('""', '"'));
    at += cell?.[0].length ?? 0;
    if (source[at] === '\t') {
      at += 1;
      continue;
    }
    rows.push(row);
    row = [];
    at += matchAt(LINE_END, source, at)?.[0].length ?? 0;
  }
  return rows;
}

function matchAt(pattern: RegExp, text: string, at: number): RegExpExecArray | undefined {
  pattern.lastIndex = at;
  return pattern.exec(text) ?? undefined;
}
