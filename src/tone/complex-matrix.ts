import type { ComplexList } from '#numerics';

/** A small square complex matrix, rows one after the other. */
export interface ComplexMatrix extends ComplexList {
  readonly size: number;
}

/** A matrix of noughts. */
export function zeroMatrix(size: number): ComplexMatrix {
  return { size, re: new Float64Array(size * size), im: new Float64Array(size * size) };
}

/** A·x. */
export function timesVector({ size, re, im }: ComplexMatrix, x: ComplexList): ComplexList {
  const out = { re: new Float64Array(size), im: new Float64Array(size) };
  for (let row = 0; row < size; row++) {
    for (let k = 0; k < size; k++) {
      const [a, b, c, d] = [re[row * size + k] ?? 0, im[row * size + k] ?? 0, x.re[k] ?? 0, x.im[k] ?? 0];
      out.re[row] = (out.re[row] ?? 0) + a * c - b * d;
      out.im[row] = (out.im[row] ?? 0) + a * d + b * c;
    }
  }
  return out;
}

/** Column of a matrix. */
export function columnOf({ size, re, im }: ComplexMatrix, column: number): ComplexList {
  const pick = (list: Float64Array): Float64Array => Float64Array.from({ length: size }, (_, row) => list[row * size + column] ?? 0);
  return { re: pick(re), im: pick(im) };
}

/** xᴴ·y. */
export function innerProduct(x: ComplexList, y: ComplexList): { readonly re: number; readonly im: number } {
  let [re, im] = [0, 0];
  for (let at = 0; at < x.re.length; at++) {
    const [a, b, c, d] = [x.re[at] ?? 0, x.im[at] ?? 0, y.re[at] ?? 0, y.im[at] ?? 0];
    re += a * c + b * d;
    im += a * d - b * c;
  }
  return { re, im };
}

/** Cholesky's factor of a Hermitian positive definite matrix, A = L·Lᴴ; `undefined` where it is none. @source GOLUB-VAN-LOAN */
export function factorOf({ size, re, im }: ComplexMatrix): ComplexMatrix | undefined {
  const lower = zeroMatrix(size);
  for (let row = 0; row < size; row++) {
    for (let column = 0; column <= row; column++) {
      let [x, y] = [re[row * size + column] ?? 0, im[row * size + column] ?? 0];
      for (let k = 0; k < column; k++) {
        const [a, b, c, d] = [lower.re[row * size + k] ?? 0, lower.im[row * size + k] ?? 0, lower.re[column * size + k] ?? 0, lower.im[column * size + k] ?? 0];
        x -= a * c + b * d;
        y -= b * c - a * d;
      }
      if (column === row) {
        if (!(x > 0)) return undefined;
        lower.re[row * size + row] = Math.sqrt(x);
      } else {
        const pivot = lower.re[column * size + column] ?? 1;
        lower.re[row * size + column] = x / pivot;
        lower.im[row * size + column] = y / pivot;
      }
    }
  }
  return lower;
}

/** Solves A·x = b through the factor of A: L·y = b, then Lᴴ·x = y. */
export function solveWith({ size, re, im }: ComplexMatrix, right: ComplexList): ComplexList {
  const x = { re: right.re.slice(), im: right.im.slice() };
  const take = (row: number, from: number, a: number, b: number): void => {
    const [c, d] = [x.re[from] ?? 0, x.im[from] ?? 0];
    x.re[row] = (x.re[row] ?? 0) - (a * c - b * d);
    x.im[row] = (x.im[row] ?? 0) - (a * d + b * c);
  };
  const divide = (row: number): void => {
    const pivot = re[row * size + row] ?? 1;
    x.re[row] = (x.re[row] ?? 0) / pivot;
    x.im[row] = (x.im[row] ?? 0) / pivot;
  };
  for (let row = 0; row < size; row++) {
    for (let k = 0; k < row; k++) take(row, k, re[row * size + k] ?? 0, im[row * size + k] ?? 0);
    divide(row);
  }
  for (let row = size - 1; row >= 0; row--) {
    for (let k = row + 1; k < size; k++) take(row, k, re[k * size + row] ?? 0, -(im[k * size + row] ?? 0));
    divide(row);
  }
  return x;
}
