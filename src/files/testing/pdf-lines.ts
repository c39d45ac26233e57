import { OPS, getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** A straight line of a page, in millimetres of paper from its lower left corner. */
export interface DrawnLine {
  readonly page: number;
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
}

type Matrix = readonly [number, number, number, number, number, number];
const IDENTITY: Matrix = [1, 0, 0, 1, 0, 0];
const MM_PER_PT = 25.4 / 72;

const times = ([a, b, c, d, e, f]: Matrix, [g, h, i, j, k, l]: Matrix): Matrix => [a * g + c * h, b * g + d * h, a * i + c * j, b * i + d * j, a * k + c * l + e, b * k + d * l + f];
const placed = ([a, b, c, d, e, f]: Matrix, x: number, y: number): readonly [number, number] => [(a * x + c * y + e) * MM_PER_PT, (b * x + d * y + f) * MM_PER_PT];

/** Every level or upright path of a document without thickness, as it comes to lie on paper: the marks a rule is held to. */
export async function linesOf(bytes: Uint8Array): Promise<readonly DrawnLine[]> {
  const document = await getDocument({ data: Uint8Array.from(bytes), useSystemFonts: false, verbosity: 0 }).promise;
  const lines: DrawnLine[] = [];
  for (let page = 1; page <= document.numPages; page += 1) {
    const { fnArray, argsArray } = await (await document.getPage(page)).getOperatorList();
    lines.push(...linesOfOperators(fnArray, argsArray as readonly unknown[]).map((line) => ({ page, ...line })));
  }
  return lines;
}

function linesOfOperators(operators: readonly number[], given: readonly unknown[]): readonly Omit<DrawnLine, 'page'>[] {
  let matrix: Matrix = IDENTITY;
  const kept: Matrix[] = [];
  return operators.flatMap((operator, index) => {
    const args = given[index] as readonly unknown[];
    if (operator === OPS.save || operator === OPS.paintFormXObjectBegin) kept.push(matrix);
    if (operator === OPS.transform) matrix = times(matrix, args as unknown as Matrix);
    if (operator === OPS.paintFormXObjectBegin && args[0] != null) matrix = times(matrix, args[0] as Matrix);
    if (operator === OPS.restore || operator === OPS.paintFormXObjectEnd) matrix = kept.pop() ?? IDENTITY;
    if (operator !== OPS.constructPath || args[2] == null) return [];
    const [left, low, right, high] = args[2] as readonly [number, number, number, number];
    if (Math.abs(right - left) > 1e-3 && Math.abs(high - low) > 1e-3) return [];
    const [[x1, y1], [x2, y2]] = [placed(matrix, left, low), placed(matrix, right, high)];
    return [{ x1, y1, x2, y2 }];
  });
}
